using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using System.Xml.Schema;
using Lanewright.App.Tests.Papers;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Register;
using Lanewright.Core.Spreading;
using Lanewright.Core.Tests;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Files;

namespace Lanewright.App.Tests.Commands;

/// <summary>
/// Digital Calibration Certificates against the published schemas: DCC 3.2.1 and D-SI 2.1.0 of the Physikalisch-Technische
/// Bundesanstalt (LGPL-3.0, read where they lie, not copied).
/// </summary>
public sealed class DigitalCertificateTests
{
    private static readonly XNamespace Si = "https://ptb.de/si";
    private static readonly XNamespace Dcc = "https://ptb.de/dcc";

    public static TheoryData<string> Sheets =>
    [
        .. Directory.GetFiles(Repository.File("examples")).Concat(Directory.GetFiles(Repository.File("examples", "calibrations")))
            .Where(file => !file.EndsWith("plan.yaml", StringComparison.Ordinal))
            .Select(file => Path.GetRelativePath(Repository.File("examples"), file)).Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_xml_of_every_sheet_is_valid_and_its_figures_read_back_bit_for_bit(string name)
    {
        var schemas = Schemas();
        if (Of(name) is not { } certificate) return;
        var bytes = DigitalCertificate.Write(certificate);
        Assert.Empty(Problems(schemas, bytes));
        var xml = XDocument.Load(new MemoryStream(bytes));
        var reals = xml.Descendants(Si + "real").ToList();
        Assert.Equal(certificate.Results.Count, reals.Count);
        foreach (var (real, result) in reals.Zip(certificate.Results))
        {
            Assert.Equal(result.Value, Number(real.Element(Si + "value")));
            Assert.Equal(SiUnits.Of(result.Unit.Dimension), real.Element(Si + "unit")!.Value);
            if (result.CoverageFactor is not >= 1) continue;
            var unc = real.Element(Si + "expandedUnc")!;
            Assert.Equal(result.Expanded, Number(unc.Element(Si + "uncertainty")));
            Assert.Equal(result.Probability, Number(unc.Element(Si + "coverageProbability")));
            Assert.Equal(result.Standard, Number(unc.Element(Si + "uncertainty")) / Number(unc.Element(Si + "coverageFactor")), result.Standard * 1e-12);
        }
    }

    [Theory]
    [InlineData("fr")]
    [InlineData("fi")]
    public void In_another_language_it_is_valid_says_its_language_and_has_the_same_figures(string code)
    {
        var schemas = Schemas();
        var language = Language.All.Single(one => one.Code == code);
        foreach (var name in Sheets.Select(row => row.Data))
        {
            if (Of(name) is not { } english) continue;
            var bytes = DigitalCertificate.Write(Of(name, language)!);
            Assert.Empty(Problems(schemas, bytes));
            var (own, other) = (XDocument.Load(new MemoryStream(bytes)), XDocument.Load(new MemoryStream(DigitalCertificate.Write(english))));
            Assert.Equal(Figures(other), Figures(own));
            Assert.All(own.Descendants(Dcc + "content"), content => Assert.Equal(code, content.Attribute("lang")?.Value));
            foreach (var element in (string[])["usedLangCodeISO639_1", "mandatoryLangCodeISO639_1"]) Assert.Equal(code, own.Descendants(Dcc + element).Single().Value);
            var (texts, englishTexts) = (Texts(own), Texts(other));
            Assert.Equal(englishTexts.Count, texts.Count);
            ReadPaper.NoEnglishIsLeft(string.Join('\n', texts), language, [english.Name, .. english.Scales.Select(scale => scale.Name)]);
        }

        static List<string> Figures(XDocument xml) => [.. xml.Descendants().Where(one => one.Name.Namespace == Si && !one.HasElements).Select(one => one.Value)];
        static List<string> Texts(XDocument xml) => [.. xml.Descendants(Dcc + "content").Select(one => one.Value)];
    }

    [Fact]
    public void Hostile_names_still_give_valid_xml()
    {
        var schemas = Schemas();
        var certificate = Of("hr-104-closed-loop.json")!;
        foreach (var text in (string[])["<b>&\"'", "  ", "a\u0001\u0008b", "]]>", "--", "😀\ud800", new string('x', 5000), "line\nline\tend "])
        {
            var hostile = certificate with
            {
                Item = text.Trim().Length == 0 ? "x" : text, Name = text, Place = text, People = text, Deviations = [text],
                Context = certificate.Context with { Yard = new() { Name = text, Address = text, Customer = text, Country = "US" }, Record = new(text + "r", 1, "f") },
            };
            Assert.Empty(Problems(schemas, DigitalCertificate.Write(hostile)));
        }
    }

    [Theory]
    [InlineData("<dcc:uniqueIdentifier>", "<dcc:uniqueIdentifiers>")]
    [InlineData("<si:coverageFactor>1", "<si:coverageFactor>-1")]
    [InlineData("<si:coverageFactor>1", "<si:coverageFactor>0")]
    [InlineData("schemaVersion=\"3.2.1\"", "schemaVersion=\"3.1.1\"")]
    [InlineData("<dcc:countryCodeISO3166_1>ZZ", "<dcc:countryCodeISO3166_1>Z")]
    public void The_schema_refuses_what_is_wrong(string right, string wrong)
    {
        var schemas = Schemas();
        var text = Encoding.UTF8.GetString(DigitalCertificate.Write(Of("hr-104-closed-loop.json")!));
        Assert.Contains(right, text, StringComparison.Ordinal);
        Assert.NotEmpty(Problems(schemas, Encoding.UTF8.GetBytes(text.Replace(right, wrong, StringComparison.Ordinal))));
    }

    private static Certificate? Of(string name, Language? language = null)
    {
        var tree = SheetFile.Read(Repository.File("examples", name));
        var context = new CertificateContext(
            new YardFacts { Name = "Hollin Ridge County" }, new("0193a1b2-0000-7000-8000-00000000000a", 17, new('a', 64)),
            new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero), "0.0.0", TextCulture.UnitedStates.In(language ?? Language.English), null);
        if (Calibration.KindOf(tree) is { } kind)
        {
            var report = Calibration.Read(tree, kind).Value!.Analyse();
            return CertificateMaker.Refusal(report.Usable, report.Head.Date) is null ? CertificateMaker.Of(report, [], context) : null;
        }

        var test = SheetAnalysis.Analyse(SheetReader.Read(tree).Value!);
        return CertificateMaker.Refusal(test.Usable, test.Sheet.Date) is null ? CertificateMaker.Of(test, [], context) : null;
    }

    private static double Number(XElement? element) => double.Parse(element!.Value, CultureInfo.InvariantCulture);

    private static List<string> Problems(XmlSchemaSet schemas, byte[] bytes)
    {
        List<string> problems = [];
        var settings = new XmlReaderSettings
        {
            ValidationType = ValidationType.Schema, Schemas = schemas, DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null,
            ValidationFlags = XmlSchemaValidationFlags.ReportValidationWarnings | XmlSchemaValidationFlags.ProcessIdentityConstraints,
        };
        settings.ValidationEventHandler += (_, e) => problems.Add(e.Message);
        try
        {
            using var reader = XmlReader.Create(new MemoryStream(bytes), settings);
            while (reader.Read())
            {
            }
        }
        catch (XmlException wrong)
        {
            problems.Add(wrong.Message);
        }

        return problems;
    }

    // Every schema by its namespace from a file, never from the network; of the W3C signature schema only the one element is needed.
    private static XmlSchemaSet Schemas()
    {
        var folder = Environment.GetEnvironmentVariable("LANEWRIGHT_DCC") is { Length: > 0 } named ? named : Path.Combine(Repository.Root, "..", "shared", "dcc");
        var file = Path.Combine(folder, "dcc-3.2.1.xsd");
        Assert.SkipUnless(
            File.Exists(file), $"The schema of the Digital Calibration Certificate is not at hand: {file} is not there (name its folder in LANEWRIGHT_DCC).");
        var schemas = new XmlSchemaSet { XmlResolver = null };
        using var signature = new StringReader(
            "<xs:schema xmlns:xs='http://www.w3.org/2001/XMLSchema' targetNamespace='http://www.w3.org/2000/09/xmldsig#'><xs:element name='Signature'/></xs:schema>");
        schemas.Add(null, XmlReader.Create(signature));
        schemas.Add("https://ptb.de/si", XmlReader.Create(Path.Combine(folder, "SI_Format-2.1.0.xsd")));
        schemas.Add("https://ptb.de/dcc", XmlReader.Create(file));
        schemas.Compile();
        return schemas;
    }
}
