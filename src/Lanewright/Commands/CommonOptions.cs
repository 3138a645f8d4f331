using System.CommandLine;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Print;

namespace Lanewright.Commands;

/// <summary>What every command is told the same way, and how it ends.</summary>
internal static class CommonOptions
{
    /// <summary>Answered.</summary>
    internal const int Answered = 0;

    /// <summary>Could not read what was given.</summary>
    internal const int CouldNotRead = 1;

    /// <summary>Answered, but the answer must not be used.</summary>
    internal const int DoNotUse = 2;

    internal static Option<bool> Json() => new("--json") { Description = "Write the result for machines, as JSON." };

    internal static Option<string> Culture() => new("--culture")
    {
        Description = "Decimal mark and customary units of what is shown and typed: "
            + string.Join(", ", TextCulture.All.Select(c => c.Name).Where(n => n.Length > 0)) + ".",
        DefaultValueFactory = _ => TextCulture.UnitedStates.Name,
    };

    internal static Option<string> Units() => new("--units")
    {
        Description = "Units of what is shown: us or si; those of the sheet when left out.",
    };

    /// <summary>The culture of an option, or null after saying which there are.</summary>
    internal static TextCulture? CultureOf(string name, TextWriter error)
    {
        if (TextCulture.TryFind(name, out var culture)) return culture;
        error.WriteLine(
            $"--culture: '{name}' is not known. Known are {string.Join(", ", TextCulture.All.Select(c => c.Name))}.");
        return null;
    }

    /// <summary>The units of an option, or of the sheet without one; null after saying which there are.</summary>
    internal static UnitPreferences? UnitsOf(string? name, UnitPreferences otherwise, TextWriter error)
    {
        switch (name?.ToUpperInvariant())
        {
            case null: return otherwise;
            case "US": return UnitPreferences.UnitedStates;
            case "SI": return UnitPreferences.Metric;
            default:
                error.WriteLine($"--units: '{name}' is not known. Known are us and si.");
                return null;
        }
    }

    internal static void Print(IEnumerable<string> lines, TextWriter output)
    {
        foreach (var line in lines)
            output.WriteLine(line);
    }

    /// <summary>Says why a file could not be used.</summary>
    internal static int Refuse(IReadOnlyList<Finding> findings, bool json, Show show, TextWriter output, TextWriter error)
    {
        if (json)
        {
            output.Write(FindingsWriter.Write(findings, show.Culture, show.Units));
            return CouldNotRead;
        }

        error.WriteLine("This could not be read.");
        Print(FindingLines.Of(findings, show), error);
        return CouldNotRead;
    }
}
