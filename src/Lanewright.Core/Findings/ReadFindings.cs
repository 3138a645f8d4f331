namespace Lanewright.Core.Findings;

/// <summary>
/// What can be wrong with a text that should be a sheet, before anything is computed from it. Where it is in the text
/// travels as the values <c>line</c> and <c>column</c> beside the others, not in the message.
/// </summary>
public static class ReadFindings
{
    // The text as a whole.

    /// <summary>The text is longer than any sheet.</summary>
    public static readonly FindingKind TooLarge = new(
        "read.too-large", Severity.Stop,
        "The text is {size} long; a sheet may have at most {limit}.",
        "Check that this is the right file. A sheet holds one test; logs and pictures do not belong in it.");

    /// <summary>There are more fields and items than any sheet has.</summary>
    public static readonly FindingKind TooManyParts = new(
        "read.too-many-parts", Severity.Stop,
        "The text has more than {limit:count} fields and items.",
        "Check that this is the right file. A sheet holds one test; keep logs in a file of their own.");

    /// <summary>Maps and lists lie too deep inside one another.</summary>
    public static readonly FindingKind TooDeep = new(
        "read.too-deep", Severity.Stop,
        "Fields lie inside one another more than {limit:count} levels deep.",
        "Check that this is the right file and that every bracket that is opened is closed again.");

    /// <summary>There is nothing in the text.</summary>
    public static readonly FindingKind Empty = new(
        "read.empty", Severity.Stop,
        "The text is empty.",
        "Check that this is the right file and that it was saved completely.");

    /// <summary>The bytes are not UTF-8, or a character is torn in half.</summary>
    public static readonly FindingKind BadCharacters = new(
        "read.bad-characters", Severity.Stop,
        "The text holds bytes that are not characters in UTF-8.",
        "Save the file again with the encoding UTF-8 (in a spreadsheet: \"CSV UTF-8\").");

    /// <summary>The text ends in the middle.</summary>
    public static readonly FindingKind CutOff = new(
        "read.cut-off", Severity.Stop,
        "The text ends before it is complete.",
        "Check that the file was saved and copied completely, and that every bracket and quote is closed.");

    /// <summary>The text breaks the rules of JSON.</summary>
    public static readonly FindingKind JsonSyntax = new(
        "read.json-syntax", Severity.Stop,
        "The text does not follow the rules of JSON near \"{near}\".",
        "Look at this place: texts and names stand in double quotes, fields are separated by commas, and a number is "
        + "plain digits with a point.");

    /// <summary>The text breaks the rules of YAML.</summary>
    public static readonly FindingKind YamlSyntax = new(
        "read.yaml-syntax", Severity.Stop,
        "The text does not follow the rules of YAML near \"{near}\".",
        "Look at this place: fields of one group start in the same column, a name is followed by a colon and a space, "
        + "and a text that holds a colon or a # stands in quotes.");

    /// <summary>A tab stands where YAML wants spaces.</summary>
    public static readonly FindingKind YamlTab = new(
        "read.yaml-tab", Severity.Stop,
        "The line begins with a tab; YAML is indented with spaces only.",
        "Replace the tabs at the start of lines by spaces.");

    /// <summary>YAML's anchors and aliases.</summary>
    public static readonly FindingKind YamlAlias = new(
        "read.yaml-alias", Severity.Stop,
        "A sheet does not use YAML's anchors and aliases (\"{near}\").",
        "Write the values out where they are needed; put a text that starts with & or * in quotes.");

    /// <summary>YAML's tags.</summary>
    public static readonly FindingKind YamlTag = new(
        "read.yaml-tag", Severity.Stop,
        "A sheet does not use YAML's tags (\"{near}\").",
        "Delete the tag; put a text that starts with ! in quotes.");

    /// <summary>A list, a map or nothing at all is used as a name.</summary>
    public static readonly FindingKind YamlName = new(
        "read.yaml-name", Severity.Stop,
        "The name of a field is a text; here it is empty, a list or a group of fields.",
        "Look at this place: often a bracket is out of place, or a colon or question mark starts the line.");

    /// <summary>More than one document in one text.</summary>
    public static readonly FindingKind SeveralDocuments = new(
        "read.several-documents", Severity.Stop,
        "The text holds more than one YAML document.",
        "Save each sheet in a file of its own and delete the separating line ---.");

    /// <summary>The text breaks the rules of CSV.</summary>
    public static readonly FindingKind CsvQuotes = new(
        "read.csv-quotes", Severity.Stop,
        "The quotes do not match near \"{near}\".",
        "A cell that holds the separator or a quote stands in double quotes, and each quote inside it is doubled.");

    /// <summary>A row of a table belongs to an item that no row above has.</summary>
    public static readonly FindingKind CsvOwner = new(
        "read.csv-owner", Severity.Stop,
        "No run above is called \"{name}\", so the row belongs to nothing.",
        "Put the table of runs first, and begin the row with the name of its run.");

    /// <summary>A cell that names a field does not hold a field's name.</summary>
    public static readonly FindingKind CsvName = new(
        "read.csv-name", Severity.Stop,
        "\"{name}\" is not the name of a field.",
        "The first cell of a row names a field, like spreader.id or runs[0].pulses; letters, digits, - and _ are "
        + "allowed, with dots between the parts.");

    /// <summary>A row has more cells than have a meaning.</summary>
    public static readonly FindingKind CsvSurplus = new(
        "read.csv-surplus", Severity.Stop,
        "The row has a cell that belongs to nothing: \"{cell}\".",
        "A row is a field, its value and, for a number, its unit; in a table each cell stands under a column's name. "
        + "Put a value that holds the separator in double quotes.");

    /// <summary>A field is both a value and a group of fields.</summary>
    public static readonly FindingKind CsvClash = new(
        "read.csv-clash", Severity.Stop,
        "This place is used once as a value and once as a group or list.",
        "Look at the names in the first column: one of them is too short or too long.");

    /// <summary>An item of a list comes before the items it follows.</summary>
    public static readonly FindingKind CsvOrder = new(
        "read.csv-order", Severity.Stop,
        "The list has {count:count} items so far, so none can have the number {number:count}.",
        "Count the items of a list from 0 without leaving one out.");

    // The file.

    /// <summary>No such file.</summary>
    public static readonly FindingKind NoFile = new(
        "read.no-file", Severity.Stop,
        "There is no file \"{file}\".",
        "Check the name and the folder.");

    /// <summary>A folder was named where a file is wanted.</summary>
    public static readonly FindingKind IsFolder = new(
        "read.is-folder", Severity.Stop,
        "\"{file}\" is a folder.",
        "Name the file inside it.");

    /// <summary>The file may not be read.</summary>
    public static readonly FindingKind FileDenied = new(
        "read.file-denied", Severity.Stop,
        "The file \"{file}\" may not be read.",
        "Ask for the right to read it, or copy it to a folder of your own.");

    /// <summary>Reading the file failed.</summary>
    public static readonly FindingKind FileFailed = new(
        "read.file-failed", Severity.Stop,
        "The file \"{file}\" could not be read: {reason}",
        "Check that the drive is connected and that no other program holds the file, then try again.");

    // The fields.

    /// <summary>A name occurs twice in one group.</summary>
    public static readonly FindingKind DuplicateField = new(
        "read.duplicate-field", Severity.Stop,
        "The field \"{name}\" is given more than once.",
        "Decide which value holds and delete the other one.");

    /// <summary>A field that the sheet does not know.</summary>
    public static readonly FindingKind UnknownField = new(
        "read.unknown-field", Severity.Warn,
        "The field \"{name}\" is not known here and was not used.",
        "Correct the name or delete the field. Closest known: {closest}.");

    /// <summary>A required field is not there.</summary>
    public static readonly FindingKind MissingField = new(
        "read.missing-field", Severity.Stop,
        "The field \"{name}\" is missing.",
        "Fill it in: {doc}");

    /// <summary>A text where a list is wanted, and the like.</summary>
    public static readonly FindingKind WrongShape = new(
        "read.wrong-shape", Severity.Stop,
        "Here stands {found}, but {expected} is wanted.",
        "Write {expected}: {doc}");

    /// <summary>A text without a meaning as a number.</summary>
    public static readonly FindingKind NotANumber = new(
        "read.not-a-number", Severity.Stop,
        "\"{read}\" is not a number that can be used here.",
        "Write {expected}: {doc}");

    /// <summary>A fraction where a count is wanted.</summary>
    public static readonly FindingKind NotWhole = new(
        "read.not-whole", Severity.Stop,
        "\"{read}\" is not a whole number.",
        "Write {expected}: {doc}");

    /// <summary>A text without a meaning as this quantity.</summary>
    public static readonly FindingKind NotAQuantity = new(
        "read.not-a-quantity", Severity.Stop,
        "\"{read}\" cannot be read as {dimension}.",
        "Write {expected}: {doc}");

    /// <summary>A number without its unit.</summary>
    public static readonly FindingKind UnitMissing = new(
        "read.unit-missing", Severity.Stop,
        "Which unit is \"{read}\" in? It could be {readings}.",
        "Write the unit behind the number.");

    /// <summary>A text that can be understood in more than one way.</summary>
    public static readonly FindingKind Ambiguous = new(
        "read.ambiguous", Severity.Stop,
        "\"{read}\" has more than one meaning: {readings}.",
        "Write it so that only one meaning is left.");

    /// <summary>A value under the least that is allowed.</summary>
    public static readonly FindingKind TooSmall = new(
        "read.too-small", Severity.Stop,
        "\"{read}\" is below the least that is allowed here, {limit}.",
        "Check the number and its unit: {doc}");

    /// <summary>A value over the most that is allowed.</summary>
    public static readonly FindingKind TooBig = new(
        "read.too-big", Severity.Stop,
        "\"{read}\" is above the most that is allowed here, {limit}.",
        "Check the number and its unit: {doc}");

    /// <summary>A text longer than allowed.</summary>
    public static readonly FindingKind TooLong = new(
        "read.too-long", Severity.Stop,
        "The text has {count:count} characters; at most {limit:count} are allowed here.",
        "Shorten it, or move the rest to the notes.");

    /// <summary>A text with characters that cannot be seen.</summary>
    public static readonly FindingKind Unprintable = new(
        "read.unprintable", Severity.Stop,
        "The text \"{read}\" holds a character that cannot be shown (U+{character}).",
        "Type the text again instead of pasting it.");

    /// <summary>A word that is not one of the choices.</summary>
    public static readonly FindingKind UnknownWord = new(
        "read.unknown-word", Severity.Stop,
        "\"{read}\" is not one of the words for this field.",
        "Use one of: {words}.");

    /// <summary>A text that is not a date.</summary>
    public static readonly FindingKind NotADate = new(
        "read.not-a-date", Severity.Stop,
        "\"{read}\" is not a date of the form year-month-day.",
        "Write the date as 2026-01-31, so that nobody can take the day for the month.");

    /// <summary>A text that is not a date and time.</summary>
    public static readonly FindingKind NotAMoment = new(
        "read.not-a-moment", Severity.Stop,
        "\"{read}\" is not a date and time with its offset from UTC.",
        "Write it as 2026-01-31T07:45:00-05:00, or with Z at the end when it is UTC.");

    /// <summary>Fewer items than needed.</summary>
    public static readonly FindingKind TooFewItems = new(
        "read.too-few-items", Severity.Stop,
        "The list has {count:count} items; at least {limit:count} are needed.",
        "Add what is missing: {doc}");

    /// <summary>More items than allowed.</summary>
    public static readonly FindingKind TooManyItems = new(
        "read.too-many-items", Severity.Stop,
        "The list has {count:count} items; at most {limit:count} are allowed.",
        "Check that the items belong to one sheet: {doc}");

    /// <summary>A group that was read and found unusable without another finding saying why.</summary>
    public static readonly FindingKind NotUsable = new(
        "read.not-usable", Severity.Stop,
        "This part of the sheet cannot be used.",
        "Fill in the fields of this part: {doc}");

    /// <summary>There is more to say than is listed.</summary>
    public static readonly FindingKind MoreFindings = new(
        "read.more-findings", Severity.Stop,
        "There are {count:count} more findings like these that are not listed.",
        "Correct the listed ones first and read the sheet again.");

    /// <summary>All of them, in the order above.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
    [
        TooLarge, TooManyParts, TooDeep, Empty, BadCharacters, CutOff, JsonSyntax, YamlSyntax, YamlTab,
        YamlAlias, YamlTag, YamlName, SeveralDocuments, CsvQuotes, CsvOwner, CsvName, CsvSurplus, CsvClash, CsvOrder,
        NoFile, IsFolder, FileDenied, FileFailed, DuplicateField, UnknownField, MissingField, WrongShape,
        NotANumber, NotWhole, NotAQuantity, UnitMissing, Ambiguous, TooSmall, TooBig, TooLong, Unprintable,
        UnknownWord, NotADate, NotAMoment, TooFewItems, TooManyItems, NotUsable, MoreFindings,
    ];
}
