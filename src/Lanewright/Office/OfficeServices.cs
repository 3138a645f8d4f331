using Lanewright.Storage;
using Microsoft.AspNetCore.DataProtection;

namespace Lanewright.Office;

/// <summary>What the office's pages and forms need of the framework.</summary>
internal static class OfficeServices
{
    /// <summary>The hidden field that proves that a form came from these pages.</summary>
    internal const string TokenField = "token";

    internal static void Add(IServiceCollection services, EntryStore store, bool local)
    {
        services.AddSingleton(new OfficeData(store, TimeProvider.System));
        services.AddSingleton(new OfficeWriter(store, TimeProvider.System));
        services.AddRazorComponents();
        services.AddAntiforgery(options =>
        {
            options.FormFieldName = TokenField;
            options.Cookie.Name = "lanewright-form";
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        // On one machine a form need not outlive the program: one that is sent later comes back with what was typed.
        if (!local) return;
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        // That one makes its key when a form first needs it; the stored keys it stands in for are not even looked for.
        foreach (var start in services.Where(service => service.ServiceType == typeof(IHostedService)
            && service.ImplementationType?.Assembly == typeof(EphemeralDataProtectionProvider).Assembly).ToList())
        {
            services.Remove(start);
        }
    }
}
