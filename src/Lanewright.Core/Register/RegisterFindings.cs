using Lanewright.Core.Findings;

namespace Lanewright.Core.Register;

/// <summary>What can be wrong with a record of the register beyond its single fields.</summary>
public static class RegisterFindings
{
    /// <summary>Two records of one kind with one name.</summary>
    public static readonly FindingKind Taken = new(
        "register.taken", Severity.Stop,
        "The register has \"{read}\" already.",
        "Change the record that is there, or give this one another name.");

    /// <summary>A day that its month does not have.</summary>
    public static readonly FindingKind NoSuchDay = new(
        "register.no-such-day", Severity.Stop,
        "Month {month:count} has no day {day:count} in every year.",
        "Choose a day that the month has in every year.");

    /// <summary>A country that is not two letters.</summary>
    public static readonly FindingKind NotACountry = new(
        "register.not-a-country", Severity.Stop,
        "\"{read}\" is not a country in two letters.",
        "Write the two letters of ISO 3166-1, such as US, CA or FI.");

    /// <summary>A change without a reason.</summary>
    public static readonly FindingKind WhyMissing = new(
        "register.why-missing", Severity.Stop,
        "The record is changed, and nothing says why.",
        "Write in a few words why: for example \"new number on the door\".");

    /// <summary>A list larger than is taken in at once.</summary>
    public static readonly FindingKind ListTooLarge = new(
        "register.list-too-large", Severity.Stop,
        "The file is {size} long; a list may have at most {limit}.",
        "Check that this is the right file, or split it; every part begins with the headings.");

    /// <summary>More rows than are taken in at once.</summary>
    public static readonly FindingKind TooManyRows = new(
        "register.too-many-rows", Severity.Stop,
        "The list has more than {limit:count} rows.",
        "Split it; every part begins with the headings.");

    /// <summary>A file that is no text.</summary>
    public static readonly FindingKind NotAText = new(
        "register.not-a-text", Severity.Stop,
        "The file holds zero bytes, so it is no list in CSV.",
        "In the spreadsheet, save the list as \"CSV UTF-8\" and choose that file.");

    /// <summary>A heading that is no field.</summary>
    public static readonly FindingKind UnknownHeading = new(
        "register.unknown-heading", Severity.Stop,
        "The heading \"{read}\" is not the name of a field.",
        "Correct it or delete the column. Closest known: {closest}.");

    /// <summary>A heading that is there twice.</summary>
    public static readonly FindingKind HeadingTwice = new(
        "register.heading-twice", Severity.Stop,
        "Two columns have the heading \"{read}\".",
        "Keep one of them.");

    /// <summary>The column of names or numbers is missing.</summary>
    public static readonly FindingKind KeyMissing = new(
        "register.key-missing", Severity.Stop,
        "No column has the heading \"{read}\", by which a record is known.",
        "Put the names of the fields into the first row; \"{read}\" must be among them.");

    /// <summary>A row with more cells than headings.</summary>
    public static readonly FindingKind CellSurplus = new(
        "register.cell-surplus", Severity.Stop,
        "The cell \"{read}\" stands under no heading.",
        "Put a cell that holds the separator in double quotes, or delete what is too much.");

    /// <summary>Two rows about one record.</summary>
    public static readonly FindingKind RowTwice = new(
        "register.row-twice", Severity.Stop,
        "Line {line:count} of the file has \"{read}\" too.",
        "Decide which row holds and delete the other one.");

    /// <summary>Two records that a row could mean.</summary>
    public static readonly FindingKind SeveralRecords = new(
        "register.several-records", Severity.Stop,
        "The register has more than one record called \"{read}\".",
        "Give one of them another name, or take it out of use, then send the list again.");

    /// <summary>A record with two versions.</summary>
    public static readonly FindingKind Unsettled = new(
        "register.unsettled", Severity.Stop,
        "Two versions of \"{read}\" stand beside one another in the register.",
        "Open the record and settle which one holds, then send the list again.");

    /// <summary>All of them, in the order above.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
    [
        Taken, NoSuchDay, NotACountry, WhyMissing, ListTooLarge, TooManyRows, NotAText, UnknownHeading, HeadingTwice, KeyMissing,
        CellSurplus, RowTwice, SeveralRecords, Unsettled,
    ];
}
