using System.Globalization;
using System.Text;
using System.Xml;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Documents;

/// <summary>
/// Writes a certificate as a Digital Calibration Certificate: XML by the open schema DCC 3.2.1 of the Physikalisch-Technische
/// Bundesanstalt, numbers by D-SI 2.1.0. Values are in SI, with as many digits as the program has.
/// </summary>
public static class DigitalCertificate
{
    private const string Dcc = "https://ptb.de/dcc";
    private const string Si = "https://ptb.de/si";

    /// <summary>Stands where the country is not known: a code that ISO 3166-1 leaves to its users.</summary>
    public const string UnknownCountry = "ZZ";

    /// <summary>The certificate as an XML file in UTF-8, without a seal.</summary>
    /// <param name="certificate">What it says.</param>
    public static byte[] Write(Certificate certificate)
    {
        ArgumentNullException.ThrowIfNull(certificate);
        using var stream = new MemoryStream();
        var settings = new XmlWriterSettings { Indent = true, NewLineChars = "\n", Encoding = new UTF8Encoding(false), CheckCharacters = true };
        using (var xml = XmlWriter.Create(stream, settings)) new Writer(xml, certificate).Document();
        stream.Write("\n"u8);
        return stream.ToArray();
    }

    private sealed class Writer(XmlWriter xml, Certificate certificate)
    {
        private CertificateContext Context => certificate.Context;

        private string Language => Context.Culture.Language.Code;

        private string YardName => Context.Yard.Name.Length > 0 ? Context.Yard.Name : Said("not stated");

        internal void Document()
        {
            xml.WriteStartDocument();
            xml.WriteStartElement("dcc", "digitalCalibrationCertificate", Dcc);
            xml.WriteAttributeString("xmlns", "si", null, Si);
            xml.WriteAttributeString("schemaVersion", "3.2.1");
            Group("administrativeData", Administrative);
            Group("measurementResults", () => Group("measurementResult", Measurement));
            xml.WriteEndElement();
            xml.WriteEndDocument();
        }

        private void Administrative()
        {
            Group("dccSoftware", Software);
            Group("coreData", () =>
            {
                Value("countryCodeISO3166_1", Context.Yard.Country.Length == 2 ? Context.Yard.Country : UnknownCountry);
                Value("usedLangCodeISO639_1", Language);
                Value("mandatoryLangCodeISO639_1", Language);
                Value("uniqueIdentifier", certificate.Number);
                if (Context.Record is { } record)
                {
                    Group("identifications", () =>
                    {
                        Identification(Said("Record"), record.Test);
                        Identification(Said("Entry of the record"), record.Entry.ToString(CultureInfo.InvariantCulture));
                        Identification(Said("SHA-256 of that entry"), record.Hash);
                    });
                }

                Value("beginPerformanceDate", Day(certificate.Date));
                Value("endPerformanceDate", Day(certificate.Date));
                Value("performanceLocation", "laboratory");
                Value("issueDate", Day(DateOnly.FromDateTime(Context.Issued.UtcDateTime)));
            });
            Group("items", () => Group("item", () =>
            {
                Text("name", Said(certificate.Item));
                if (certificate.Facts.Count > 0) Rich("description", Rows(certificate.Facts[0]));
                Group("identifications", () => Identification(Said("Number"), Said(certificate.Item)));
            }));
            Group("calibrationLaboratory", () => Contact(YardName));
            Group("respPersons", () =>
            {
                if (certificate.Authorised.Length > 0) Person(certificate.Authorised, Said("authorised"), true);
                if (certificate.People.Length > 0) Person(certificate.People, Said("carried out"), certificate.Authorised.Length == 0);
                if (certificate.Authorised.Length + certificate.People.Length == 0) Person(Said("not stated"), Said("carried out"), true);
            });
            Group("customer", () => ContactBody(Context.Yard.Customer.Length > 0 ? Context.Yard.Customer : YardName));
            Group("statements", () =>
            {
                Declaration(Said("Standing"), certificate.Standing);
                Declaration(Said("Scope"), Said(Certificate.Covers));
                if (certificate.Invented) Declaration(Said("Data"), Said(Certificate.MadeUp));
                foreach (var line in certificate.Deviations) Declaration(Said("Deviation or remark"), line);
            });
        }

        private void Measurement()
        {
            Text("name", certificate.KindName);
            if (certificate.Name.Length > 0) Rich("description", [certificate.Name]);
            Group("usedMethods", () => Group("usedMethod", () =>
            {
                Text("name", certificate.KindName);
                Rich("description", certificate.Method);
            }));
            Group("usedSoftware", Software);
            if (certificate.Scales.Count > 0)
            {
                Group("measuringEquipments", () =>
                {
                    foreach (var scale in certificate.Scales)
                    {
                        Group("measuringEquipment", () =>
                        {
                            Text("name", scale.Name);
                            Rich("description",
                                [scale.Text, Said(scale.Verified is { } day ? (Phrase)$"Last verified {Day(day)}." : "When it was verified is not stated.")]);
                        });
                    }
                });
            }

            var conditions = certificate.Facts.Skip(1).SelectMany(group => group.Rows).Where(row => row.Text.Length > 0)
                .Prepend((Said("Place"), certificate.Place)).Where(row => row.Item2.Length > 0).ToList();
            if (conditions.Count > 0)
            {
                Group("influenceConditions", () =>
                {
                    foreach (var (name, text) in conditions)
                    {
                        Group("influenceCondition", () =>
                        {
                            Text("name", name);
                            Group("data", () => Rich("text", [text]));
                        });
                    }
                });
            }

            Group("results", () =>
            {
                foreach (var result in certificate.Results)
                {
                    Group("result", () =>
                    {
                        Text("name", Said(result.Name));
                        Rich("description", [result.Text]);
                        Group("data", () => Group("quantity", () => Real(result)));
                    });
                }

                foreach (var table in certificate.Tables) Table(table);
            });
            if (certificate.Conformity is { } conformity)
            {
                Group("measurementMetaData", () => Group("metaData", () =>
                {
                    Text("name", Said("Conformity"));
                    Rich("description", [conformity.Rule]);
                    Rich("declaration", [conformity.Text]);
                    // The schema has no word for "cannot tell": then the declaration alone says it.
                    if (conformity.Word is "pass" or "fail") Value("conformity", conformity.Word);
                }));
            }
        }

        private void Table(CertificateTable table) => Group("result", () =>
        {
            Text("name", table.Caption.Length > 0 ? table.Caption : Said("Table"));
            Group("data", () => Rich(
                "text",
                [
                    string.Join(" | ", table.Headings),
                    .. table.Rows.Select(row => string.Join(" | ", row)),
                ]));
        });

        private void Real(CertificateResult result)
        {
            var unit = SiUnits.Of(result.Unit.Dimension);
            xml.WriteStartElement("si", "real", Si);
            xml.WriteElementString("si", "value", Si, Number(result.Value));
            xml.WriteElementString("si", "unit", Si, unit);
            if (result.Expanded is { } expanded && result.CoverageFactor is { } k)
            {
                if (k >= 1)
                {
                    xml.WriteStartElement("si", "expandedUnc", Si);
                    xml.WriteElementString("si", "uncertainty", Si, Number(expanded));
                    xml.WriteElementString("si", "coverageFactor", Si, Plain(k));
                    xml.WriteElementString("si", "coverageProbability", Si, Plain(result.Probability));
                }
                else
                {
                    // D-SI allows no coverage factor below 1.
                    xml.WriteStartElement("si", "coverageInterval", Si);
                    xml.WriteElementString("si", "standardUnc", Si, Number(result.Standard));
                    xml.WriteElementString("si", "intervalMin", Si, Number(result.Value - expanded));
                    xml.WriteElementString("si", "intervalMax", Si, Number(result.Value + expanded));
                    xml.WriteElementString("si", "coverageProbability", Si, Plain(result.Probability));
                }

                xml.WriteEndElement();
            }

            xml.WriteEndElement();
        }

        private void Software() => Group("software", () =>
        {
            Text("name", "Lanewright");
            Value("release", Context.Version);
            Value("type", "application");
        });

        private void Person(string name, string role, bool mainSigner) => Group("respPerson", () =>
        {
            Group("person", () => Text("name", name));
            Value("role", role);
            Value("mainSigner", mainSigner ? "true" : "false");
        });

        private void Contact(string name) => Group("contact", () => ContactBody(name));

        private void ContactBody(string name)
        {
            Text("name", name);
            Group("location", () =>
            {
                if (Context.Yard.Country.Length == 2) Value("countryCode", Context.Yard.Country);
                Rich("further", [Context.Yard.Address.Length > 0 ? Context.Yard.Address : Said("Address not stated.")]);
            });
        }

        private void Identification(string name, string value) => Group("identification", () =>
        {
            Value("issuer", "calibrationLaboratory");
            Value("value", value);
            Text("name", name);
        });

        private void Declaration(string name, string text) => Group("statement", () =>
        {
            Text("name", name);
            Rich("declaration", [text]);
        });

        private string Said(Phrase phrase) => Context.Culture.Say(phrase);

        private void Text(string element, string text) => Group(element, () => Content(text));

        private void Rich(string element, IReadOnlyList<string> lines) => Group(element, () =>
        {
            foreach (var line in lines) Content(line);
        });

        private void Content(string text)
        {
            xml.WriteStartElement("dcc", "content", Dcc);
            xml.WriteAttributeString("lang", Language);
            xml.WriteString(Clean(text));
            xml.WriteEndElement();
        }

        private void Value(string element, string text) => xml.WriteElementString("dcc", element, Dcc, Clean(text));

        private void Group(string element, Action content)
        {
            xml.WriteStartElement("dcc", element, Dcc);
            content();
            xml.WriteEndElement();
        }

        private List<string> Rows(CertificateFacts facts) =>
            [.. facts.Rows.Where(row => row.Text.Length > 0).Select(row => Said($"{row.Name}: {row.Text}"))];

        // What XML cannot hold, and blanks that its schema does not allow at the ends.
        private static string Clean(string text) =>
            string.Join(' ', string.Concat(text.EnumerateRunes().Select(rune => rune.Value is < 0x20 or 0xFFFE or 0xFFFF or 0xFFFD ? " " : rune.ToString()))
                .Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    // The shortest text that reads back as the same number; D-SI wants an exponent without blanks.
    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string Plain(double value) => value.ToString("0.################", CultureInfo.InvariantCulture);
}
