using System.Net;
using System.Text.RegularExpressions;

namespace Lanewright.App.Tests.Languages;

/// <summary>What a person sees or hears of a piece of HTML.</summary>
internal static partial class MarkupText
{
    /// <summary>The texts between tags, names in code aside, and the attributes that are shown or read out.</summary>
    public static IEnumerable<string> Of(string html) =>
        Tag().Split(Unsaid().Replace(html, " ")).Concat(Attribute().Matches(html).Select(match => match.Groups[1].Value))
            .Select(text => WebUtility.HtmlDecode(text).Trim()).Where(text => text.Length > 0);

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("<!doctype[^>]*>|<(code|style|script)[^>]*>.*?</\\1>", RegexOptions.Singleline | RegexOptions.IgnoreCase)]
    private static partial Regex Unsaid();

    [GeneratedRegex("(?:aria-label|placeholder|title|alt)=\"([^\"]*)\"")]
    private static partial Regex Attribute();
}
