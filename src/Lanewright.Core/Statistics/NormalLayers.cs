namespace Lanewright.Core.Statistics;

/// <summary>
/// The 256 layers of equal area that cover the half-bell exp(-x^2/2): 255 rectangles and, at the bottom, a rectangle
/// with the tail beyond it. Made from <see cref="Elementary"/> when first used.
/// </summary>
/// <remarks>G. Marsaglia and W. W. Tsang, "The ziggurat method", Journal of Statistical Software 5(8), 2000.</remarks>
internal static class NormalLayers
{
    /// <summary>Where the tail begins: the edge for which 256 equal areas just reach the top of the bell.</summary>
    internal const double TailStart = 3.6541528853610088;

    /// <summary>2^52: a signed 53-bit number over this is uniform between -1 and 1.</summary>
    private const double Range = 4503599627370496;

    /// <summary>The layers, from the bottom up.</summary>
    internal static readonly Layer[] Layers = new Layer[256];

    /// <summary>Height of the bell at the right edge of layer i; 1 after the last.</summary>
    internal static readonly double[] Height = new double[257];

    static NormalLayers()
    {
        var area = (TailStart * Bell(TailStart))
            + (Math.Sqrt(Math.PI / 2) * SpecialFunctions.Erfc(TailStart / Math.Sqrt(2)));
        var edge = area / Bell(TailStart);
        var next = TailStart;
        for (var i = 0; i < 256; i++)
        {
            Layers[i] = new Layer(edge / Range, next);
            Height[i] = i == 0 ? 0 : Bell(edge);
            edge = next;
            next = i < 254 ? Math.Sqrt(-2 * Elementary.Log((area / edge) + Bell(edge))) : 0;
        }

        Height[256] = 1;
    }

    internal static double Bell(double x) => Elementary.Exp(-0.5 * x * x);

    /// <summary>One layer.</summary>
    /// <param name="Scale">Its width, per unit of the signed 53-bit number.</param>
    /// <param name="Inside">Nearer to the centre than this every place in it is under the bell.</param>
    internal readonly record struct Layer(double Scale, double Inside);
}
