using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using Lanewright.Core.Text;
using Lanewright.Host;

namespace Lanewright.Accounts;

/// <summary>How many requests an address may send in a minute, and what a try costs.</summary>
/// <param name="SignIn">Tries to sign in or pair.</param>
/// <param name="Api">Requests to the API: a phone that sends a day's photos must not be held up.</param>
/// <param name="HashIterations">What checking a password costs; less for tests only.</param>
internal sealed record RequestLimits(int SignIn = 10, int Api = 1200, int HashIterations = PasswordRules.Iterations);

/// <summary>Holds up addresses that try passwords and codes, or flood the server.</summary>
internal static class SendingLimits
{
    /// <summary>Marks the addresses where passwords and codes are sent.</summary>
    internal const string SignInPolicy = "sign-in";

    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);

    internal static void Add(IServiceCollection services, RequestLimits limits) => services.AddRateLimiter(limiter =>
    {
        limiter.AddPolicy(SignInPolicy, context => HttpMethods.IsPost(context.Request.Method)
            ? In(Window, limits.SignIn, Key(context))
            : RateLimitPartition.GetNoLimiter(""));
        limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
            context.Request.Path.StartsWithSegments("/api") ? In(Window, limits.Api, Key(context)) : RateLimitPartition.GetNoLimiter(""));
        limiter.OnRejected = async (rejected, _) =>
        {
            var context = rejected.HttpContext;
            context.Response.Headers.RetryAfter = ((int)Window.TotalSeconds).ToString(CultureInfo.InvariantCulture);
            Phrase title = "Too many requests from this address", what = "Wait a minute, then try again. Nothing was stored.";
            var answer = context.Request.Path.StartsWithSegments("/api")
                ? Problems.Answer(429, title, what)
                : AccountPages.Notice(429, title, what);
            await answer.ExecuteAsync(context);
        };
    });

    private static RateLimitPartition<string> In(TimeSpan window, int most, string key) =>
        RateLimitPartition.GetFixedWindowLimiter(key, _ => new() { PermitLimit = most, Window = window, QueueLimit = 0 });

    // A device may take any number of IPv6 addresses within its network's half.
    private static string Key(HttpContext context)
    {
        var address = context.Connection.RemoteIpAddress ?? IPAddress.None;
        if (address.IsIPv4MappedToIPv6) address = address.MapToIPv4();
        return address.AddressFamily is AddressFamily.InterNetworkV6
            ? Convert.ToHexString(address.GetAddressBytes().AsSpan(0, 8)) + address.ScopeId
            : address.ToString();
    }
}
