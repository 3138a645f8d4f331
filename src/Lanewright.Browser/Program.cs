using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using Lanewright.Core.Exchange;

[assembly: SupportedOSPlatform("browser")]

namespace Lanewright.Browser;

/// <summary>The doors from the pages into Core: one JSON text in, one JSON text out.</summary>
internal static partial class Program
{
    // The pages start the runtime and then call the exports; nothing happens by itself.
    private static void Main()
    {
    }

    /// <summary>The analysis beside a test that is being typed; see <see cref="Core.Calibrations.Live.Answer"/>.</summary>
    [JSExport]
    internal static string Live(string json) => Core.Calibrations.Live.Answer(json);

    /// <summary>The fields of a calibration's sheet; see <see cref="Core.Calibrations.Live.Form"/>.</summary>
    [JSExport]
    internal static string Form(string kind) => Core.Calibrations.Live.Form(kind);

    /// <summary>The calibrations there are; see <see cref="Core.Calibrations.Live.Kinds"/>.</summary>
    [JSExport]
    internal static string Kinds(string language) => Core.Calibrations.Live.Kinds(language);

    /// <summary>The plan of a test; see <see cref="LiveSheet.Plan"/>.</summary>
    [JSExport]
    internal static string Plan(string json) => LiveSheet.Plan(json);

    /// <summary>The value keyed in beside the one to key in; see <see cref="LiveSheet.Keyed"/>.</summary>
    [JSExport]
    internal static string Keyed(string json) => LiveSheet.Keyed(json);

    /// <summary>The causes behind a test, when somebody asks; see <see cref="Core.Diagnosis.LiveDiagnosis.Answer"/>.</summary>
    [JSExport]
    internal static string Diagnose(string json) => Core.Diagnosis.LiveDiagnosis.Answer(json);

    /// <summary>Practice mode; see <see cref="Core.Practice.LivePractice.Answer"/>.</summary>
    [JSExport]
    internal static string Practice(string json) => Core.Practice.LivePractice.Answer(json);

    /// <summary>What there is to choose from in practice mode; see <see cref="Core.Practice.LivePractice.Lists"/>.</summary>
    [JSExport]
    internal static string PracticeLists(string language) => Core.Practice.LivePractice.Lists(language);

    /// <summary>The version, to hold against the page's own.</summary>
    [JSExport]
    internal static string Version() => typeof(Program).Assembly.GetName().Version?.ToString(3) ?? "0";
}
