namespace Lanewright.Core.Tests;

/// <summary>The files of the repository that the tests were built from.</summary>
internal static class Repository
{
    /// <summary>Whether pages and schemas that are written from the code are to be written anew.</summary>
    public static bool UpdatesDocs => Environment.GetEnvironmentVariable("LANEWRIGHT_UPDATE_DOCS") == "1";

    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = Find();

    /// <summary>The full path of a file given by the parts of its path.</summary>
    public static string File(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>A file's text with \n at the ends of lines; empty when there is no such file.</summary>
    public static string Text(params string[] parts) =>
        System.IO.File.Exists(File(parts)) ? System.IO.File.ReadAllText(File(parts)).ReplaceLineEndings("\n") : "";

    /// <summary>Asserts that a generated file is what the code makes now, after writing it when that is asked for.</summary>
    public static void IsUpToDate(string text, params string[] parts)
    {
        if (UpdatesDocs) System.IO.File.WriteAllText(File(parts), text);
        Assert.True(
            Text(parts) == text,
            $"{string.Join('/', parts)} is out of date. Run this test with LANEWRIGHT_UPDATE_DOCS=1 and commit the file.");
    }

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!System.IO.File.Exists(Path.Combine(folder.FullName, "Lanewright.slnx")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("The solution is not above the tests.");
        return folder.FullName;
    }
}
