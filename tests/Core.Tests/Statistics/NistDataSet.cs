using System.Globalization;

namespace Lanewright.Core.Tests.Statistics;

/// <summary>One file of <c>data/nist-strd</c>; the layout is in its SOURCE.md.</summary>
internal sealed class NistDataSet
{
    private readonly Dictionary<string, double> certified = [];

    private NistDataSet(string name)
    {
        var inData = false;
        List<double> x = [], y = [];
        foreach (var line in File.ReadLines(Path.Combine(Root(), "data", "nist-strd", name + ".txt")))
        {
            var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (line.StartsWith('#') || words.Length == 0)
                continue;
            if (words is ["data"])
                inData = true;
            else if (inData)
            {
                x.Add(Number(words[0]));
                y.Add(Number(words[^1]));
            }
            else if (words[0] == "coefficient")
                Coefficients.Add((Number(words[1]), Number(words[2])));
            else
                certified.Add(words[0], Number(words[1]));
        }

        X = [.. x];
        Y = [.. y];
    }

    internal double[] X { get; }

    internal double[] Y { get; }

    internal List<(double Value, double StandardDeviation)> Coefficients { get; } = [];

    internal double this[string name] => certified[name];

    internal static NistDataSet Read(string name) => new(name);

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Lanewright.slnx")))
            folder = folder.Parent ?? throw new InvalidOperationException("The tests run outside the repository.");
        return folder.FullName;
    }
}
