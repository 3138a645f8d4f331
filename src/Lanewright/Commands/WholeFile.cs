using Lanewright.Core.Text;
using Lanewright.Office;

namespace Lanewright.Commands;

/// <summary>Writes files whole or not at all: nobody may take half a paper for a whole one.</summary>
internal static class WholeFile
{
    /// <summary>Writes the file; says what is wrong with the option and returns false when it cannot.</summary>
    internal static bool Write(string target, byte[] bytes, TextWriter error, string option = "--out")
    {
        var beside = target + ".new";
        try
        {
            File.WriteAllBytes(beside, bytes);
            File.Move(beside, target, overwrite: true);
            return true;
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            if (File.Exists(beside)) File.Delete(beside);
            error.WriteLine(OfficeText.Say($"{option}: '{Excerpt.Of(target, 200)}' cannot be written: {wrong.Message}"));
            return false;
        }
    }
}
