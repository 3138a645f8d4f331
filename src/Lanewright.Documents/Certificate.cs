using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Documents;

/// <summary>
/// What a certificate says, worked out once from a report: the paper, the XML and the statement that is checked later are all
/// drawn from this. Texts are in the language of <see cref="Context"/>; what the statement holds does not depend on it. The list is that of ISO/IEC 17025:2017, 7.8.2 and 7.8.4, from memory; see docs/formats/certificate.md.
/// </summary>
public sealed record Certificate
{
    /// <summary>Its number, made from <see cref="Statement"/>: the same content has the same number.</summary>
    public required string Number { get; init; }

    /// <summary>Title, by standing: a calibration certificate only where an accreditation is stated.</summary>
    public required string Title { get; init; }

    /// <summary>What kind of paper this is, in a sentence.</summary>
    public required string Standing { get; init; }

    /// <summary>Machine word of what was done, such as <c>drop-test</c>.</summary>
    public required string Kind { get; init; }

    /// <summary>What was done, for people.</summary>
    public required string KindName { get; init; }

    /// <summary>The line that names the test.</summary>
    public string Name { get; init; } = "";

    /// <summary>Whether the data are made up.</summary>
    public bool Invented { get; init; }

    /// <summary>Number of the spreader, or of what else was calibrated.</summary>
    public required Phrase Item { get; init; }

    /// <summary>Day of the work.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Where.</summary>
    public required string Place { get; init; }

    /// <summary>Who did it.</summary>
    public required string People { get; init; }

    /// <summary>Where it comes from, who asked, who issued it.</summary>
    public required CertificateContext Context { get; init; }

    /// <summary>Groups of facts: item, material, conditions, method.</summary>
    public required IReadOnlyList<CertificateFacts> Facts { get; init; }

    /// <summary>The method in sentences.</summary>
    public required IReadOnlyList<string> Method { get; init; }

    /// <summary>The results with their uncertainty.</summary>
    public required IReadOnlyList<CertificateResult> Results { get; init; }

    /// <summary>Conformity with the tolerance; null where none is stated.</summary>
    public CertificateConformity? Conformity { get; init; }

    /// <summary>What the results mean, in sentences.</summary>
    public required IReadOnlyList<string> Lines { get; init; }

    /// <summary>Tables behind the results.</summary>
    public required IReadOnlyList<CertificateTable> Tables { get; init; }

    /// <summary>Pictures, as SVG text.</summary>
    public required IReadOnlyList<string> Pictures { get; init; }

    /// <summary>The scales and how they are traceable.</summary>
    public required IReadOnlyList<CertificateScale> Scales { get; init; }

    /// <summary>Deviations: the findings, gravest first.</summary>
    public required IReadOnlyList<string> Deviations { get; init; }

    /// <summary>Who authorised it; empty while nobody decided.</summary>
    public string Authorised { get; init; } = "";

    /// <summary>The statement of what it covers.</summary>
    public static Phrase Covers =>
        "This record relates only to the item, material, settings and conditions named above, as they were on the day of the work."
        + " It may be copied only as a whole.";

    /// <summary>What is said of made-up data.</summary>
    public static Phrase MadeUp => "Invented data: made up for demonstration or practice.";
}

/// <summary>Where a certificate comes from.</summary>
/// <param name="Yard">Who the yard is.</param>
/// <param name="Record">The record behind it; null for a sheet that is in no records.</param>
/// <param name="Issued">When it is issued, UTC.</param>
/// <param name="Version">Version of the program.</param>
/// <param name="Culture">Decimal mark and language.</param>
/// <param name="Units">Units of what is no result.</param>
public sealed record CertificateContext(
    Core.Register.YardFacts Yard, RecordReference? Record, DateTimeOffset Issued, string Version, TextCulture Culture, UnitPreferences? Units)
{
    /// <summary>What was decided, by whom.</summary>
    public CertificateDecision? Decision { get; init; }

    /// <summary>Address of the record, for the code on paper; empty for none.</summary>
    public string Address { get; init; } = "";

    /// <summary>Time zone of the work as the device gave it; empty when nobody said.</summary>
    public string Zone { get; init; } = "";

    /// <summary>The yard's tolerance; null when its rules are not at hand.</summary>
    public double? YardTolerance { get; init; }
}

/// <summary>A test's record as it stood at one of its entries.</summary>
/// <param name="Test">Identity of the test.</param>
/// <param name="Entry">Number of its last entry then.</param>
/// <param name="Hash">That entry's hash, which pins everything before it.</param>
public sealed record RecordReference(string Test, long Entry, string Hash);

/// <summary>What was decided on a test.</summary>
/// <param name="Verdict">adopt, reject or repeat.</param>
/// <param name="By">Who.</param>
/// <param name="Why">Why.</param>
/// <param name="Keyed">What was keyed in, as typed.</param>
/// <param name="ReadBack">What the controller showed afterwards, as typed.</param>
public sealed record CertificateDecision(string Verdict, string By, string Why, string Keyed, string ReadBack);

/// <summary>A group of facts.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="Rows">Names and texts; those without text are left out.</param>
public sealed record CertificateFacts(string Heading, IReadOnlyList<(string Name, string Text)> Rows);

/// <summary>One result.</summary>
/// <param name="Name">What it is; the statement has it in English, whatever the reader's language.</param>
/// <param name="Unit">The unit it is shown in.</param>
/// <param name="Value">The value, SI.</param>
/// <param name="Expanded">Expanded uncertainty, SI; null for a figure that is exact or a mere calculation.</param>
/// <param name="Standard">Standard uncertainty, SI.</param>
/// <param name="Probability">Coverage probability.</param>
/// <param name="Text">The value with its uncertainty as it is printed.</param>
public sealed record CertificateResult(
    Phrase Name, Unit Unit, double Value, double? Expanded, double Standard, double Probability, string Text)
{
    /// <summary>Expanded by standard uncertainty; null without uncertainty.</summary>
    public double? CoverageFactor => Expanded is { } expanded && Standard > 0 ? expanded / Standard : null;
}

/// <summary>Conformity with a tolerance.</summary>
/// <param name="Word">pass, fail or cannot-tell.</param>
/// <param name="Text">The statement in words.</param>
/// <param name="Rule">The decision rule in words.</param>
/// <param name="Share">Delivered by asked.</param>
/// <param name="Expanded">Its expanded uncertainty.</param>
/// <param name="Tolerance">The tolerance, plus or minus.</param>
public sealed record CertificateConformity(string Word, string Text, string Rule, double Share, double Expanded, double Tolerance);

/// <summary>A table.</summary>
/// <param name="Caption">What it shows.</param>
/// <param name="Headings">Headings, units included.</param>
/// <param name="Rows">Rows of texts.</param>
/// <param name="Numeric">Which columns hold numbers.</param>
public sealed record CertificateTable(
    string Caption, IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<string>> Rows, IReadOnlyList<bool> Numeric);

/// <summary>A scale behind a result.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Text">What is known of it: capacity, division, class, tolerance.</param>
/// <param name="Verified">When it was last verified; null when nobody said.</param>
public sealed record CertificateScale(string Name, string Text, DateOnly? Verified);
