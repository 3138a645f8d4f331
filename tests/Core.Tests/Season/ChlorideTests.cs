using Lanewright.Core.Liquids;
using Lanewright.Core.Season;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Season;

public sealed class ChlorideTests
{
    /// <summary>1 short ton of pure NaCl holds 1,213.3 lb of chloride (facts/materials.md, calculated there).</summary>
    [Fact]
    public void A_ton_of_salt() => Assert.Equal(1213.3, Chloride.InSalt(2000, SaltKind.SodiumChloride, 0, 1).Value, 0.1);

    [Theory]
    [InlineData(SaltKind.SodiumChloride, 0.6066)]
    [InlineData(SaltKind.CalciumChloride, 0.6389)]
    [InlineData(SaltKind.MagnesiumChloride, 0.7447)]
    [InlineData(SaltKind.PotassiumAcetate, 0)]
    [InlineData(SaltKind.None, 0)]
    public void Shares_by_atomic_masses(SaltKind salt, double share) => Assert.Equal(share, Chloride.Share(salt), 4);

    [Fact]
    public void Water_and_dirt_hold_none()
    {
        Assert.Equal(0.98 * 0.95 * Chloride.Share(SaltKind.SodiumChloride), Chloride.InSalt(1, SaltKind.SodiumChloride, 0.02, 0.95).Value, 12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Chloride.InSalt(1, SaltKind.SodiumChloride, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Chloride.InSalt(1, SaltKind.SodiumChloride, 0, 0));
    }

    [Fact]
    public void Saving_carries_what_before_and_after_share()
    {
        var scale = ErrorSource.Normal("scale", "scale");
        var saved = Chloride.Saved(100_000, Measured.Of(1.09, 0.0109, scale), Measured.Of(1.00, 0.0100, scale));
        Assert.Equal(9000, saved.Value, 6);
        // One scale for both: 1 % of the difference, not of each.
        Assert.Equal(90, saved.StandardUncertainty, 6);
    }
}
