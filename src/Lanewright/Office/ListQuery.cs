using System.Globalization;

namespace Lanewright.Office;

/// <summary>What part of a long table is wanted: words, order and page, as in the page's address.</summary>
/// <param name="Path">The page.</param>
/// <param name="Words">Words that must all be found; empty for everything.</param>
/// <param name="Only">A further filter of the page; empty for none.</param>
/// <param name="Sort">The column that orders; empty for the page's own order.</param>
/// <param name="Down">Whether the order is reversed.</param>
/// <param name="Page">Which page, from 1.</param>
internal sealed record ListQuery(string Path, string Words, string Only, string Sort, bool Down, int Page)
{
    /// <summary>Rows on one page.</summary>
    internal const int PageSize = 100;

    private const int LongestWords = 200;
    private const int MostPages = 100_000;

    internal int Skip => (Page - 1) * PageSize;

    internal IReadOnlyList<string> WordList => Words.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries);

    internal static ListQuery Of(HttpRequest request)
    {
        var words = request.Query["q"].ToString().Trim();
        var page = int.TryParse(request.Query["page"], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 1;
        return new(
            request.Path, words.Length > LongestWords ? words[..LongestWords] : words, request.Query["only"].ToString(),
            request.Query["sort"].ToString(), request.Query["down"] == "1", Math.Clamp(page, 1, MostPages));
    }

    /// <summary>Whether a text holds all the words.</summary>
    internal bool Finds(string text) => WordList.All(word => text.Contains(word, StringComparison.OrdinalIgnoreCase));

    /// <summary>The same rows in another order, or turned around when they have it already.</summary>
    internal string OrderedBy(string column) => (this with { Sort = column, Down = Sort == column && !Down, Page = 1 }).Address(Path);

    internal string AtPage(int page) => (this with { Page = page }).Address(Path);

    /// <summary>The address of these rows at another path, such as that of the download.</summary>
    internal string Address(string path)
    {
        var parts = new List<string>();
        if (Words.Length > 0) parts.Add("q=" + Uri.EscapeDataString(Words));
        if (Only.Length > 0) parts.Add("only=" + Uri.EscapeDataString(Only));
        if (Sort.Length > 0) parts.Add("sort=" + Uri.EscapeDataString(Sort));
        if (Down) parts.Add("down=1");
        if (Page > 1) parts.Add(string.Create(CultureInfo.InvariantCulture, $"page={Page}"));
        return parts.Count == 0 ? path : $"{path}?{string.Join('&', parts)}";
    }

    /// <summary>The rows of this page of a list that is at hand, in the order asked for.</summary>
    /// <param name="all">Every row that is found, in the page's own order.</param>
    /// <param name="keys">What a row is ordered by, by column; texts or numbers, null last.</param>
    internal ListPage<T> Take<T>(IReadOnlyList<T> all, IReadOnlyDictionary<string, Func<T, IComparable?>> keys) =>
        new([.. InOrder(all, keys).Skip(Skip).Take(PageSize)], all.Count);

    /// <summary>Every row of a list that is at hand, in the order asked for; for a download.</summary>
    internal IEnumerable<T> InOrder<T>(IReadOnlyList<T> all, IReadOnlyDictionary<string, Func<T, IComparable?>> keys)
    {
        if (!keys.TryGetValue(Sort, out var key)) return Down ? all.Reverse() : all;
        var filled = all.Where(row => key(row) is not (null or ""));
        var ordered = Down ? filled.OrderByDescending(key, ColumnOrder.Instance) : filled.OrderBy(key, ColumnOrder.Instance);
        return ordered.Concat(all.Where(row => key(row) is null or ""));
    }

    private sealed class ColumnOrder : IComparer<IComparable?>
    {
        internal static readonly ColumnOrder Instance = new();

        public int Compare(IComparable? x, IComparable? y) =>
            x is string a && y is string b ? NaturalOrder.Instance.Compare(a, b) : Comparer<IComparable?>.Default.Compare(x, y);
    }
}

/// <summary>One page of a table.</summary>
/// <param name="Rows">Its rows.</param>
/// <param name="Count">How many rows there are on all pages.</param>
internal sealed record ListPage<T>(IReadOnlyList<T> Rows, int Count)
{
    internal static ListPage<T> Empty { get; } = new([], 0);
}
