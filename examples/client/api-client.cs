// A small client of the interface: prints the due list, and keeps a copy of every entry in a file, going on where it stopped.
//
//   dotnet run examples/client/api-client.cs -- http://localhost:5180 entries.jsonl
//
// Where people have accounts, a supervisor makes a token at /office/accounts (role technician, since all entries are read);
// it is given in the variable LANEWRIGHT_TOKEN. The interface is described in docs/formats/api.md.
using System.Net.Http.Headers;
using System.Text.Json;

if (args is not [var address, var file])
{
    Console.Error.WriteLine("usage: dotnet run examples/client/api-client.cs -- ADDRESS FILE");
    return 1;
}

using var client = new HttpClient { BaseAddress = new(address) };
if (Environment.GetEnvironmentVariable("LANEWRIGHT_TOKEN") is { Length: > 0 } token)
    client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);

var hello = await Get("/api/hello");
if (!hello.TryGetProperty("lanewright", out var version) || version.GetInt32() != 1)
    throw new InvalidOperationException($"{address} does not answer as version 1 of the interface.");

var due = await Get("/api/reports/due");
Console.WriteLine(due.GetProperty("title").GetString());
foreach (var row in due.GetProperty("rows").EnumerateArray())
    Console.WriteLine("  " + string.Join("  ", row.EnumerateArray().Select(cell => cell.ToString())));

// The last line of the copy says how far it goes; a line that was cut off is fetched again.
var kept = File.Exists(file) ? [.. (await File.ReadAllTextAsync(file)).Split('\n')[..^1]] : new List<string>();
var last = kept.Count > 0 ? JsonDocument.Parse(kept[^1]).RootElement.GetProperty("number").GetInt64() : 0;
var before = last;
while (true)
{
    var answer = await Get($"/api/entries?after={last}");
    var lines = answer.GetProperty("entries").EnumerateArray().Select(entry => entry.GetRawText()).ToList();
    if (lines.Count == 0) break;
    kept.AddRange(lines);
    last = answer.GetProperty("entries").EnumerateArray().Last().GetProperty("number").GetInt64();
}

await File.WriteAllTextAsync(file + ".new", string.Concat(kept.Select(line => line + "\n")));
File.Move(file + ".new", file, overwrite: true);
Console.WriteLine($"{last - before} entries added to {file}, {last} in all.");
return 0;

async Task<JsonElement> Get(string path)
{
    using var answer = await client.GetAsync(path);
    var json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
    // Every refusal says what is wrong in words.
    return answer.IsSuccessStatusCode ? json : throw new InvalidOperationException($"{path}: {json.GetProperty("title").GetString()}");
}
