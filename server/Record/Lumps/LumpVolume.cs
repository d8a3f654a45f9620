using System.Collections.Immutable;

namespace HealthNotes.Record.Lumps;

/// <summary>What a lump's volume was worked out as.</summary>
public enum VolumeShape
{
    /// <summary>Three diameters were measured: an ellipsoid.</summary>
    Ellipsoid,

    /// <summary>Two were measured: the third is taken to be the shorter one.</summary>
    Spheroid,

    /// <summary>One was measured: taken to be a ball.</summary>
    Sphere,
}

/// <summary>A volume from diameters in millimetres: pi/6 a b c (standard geometry).</summary>
/// <param name="CubicMillimetres">The volume in mm³.</param>
/// <param name="Shape">What had to be assumed.</param>
public readonly record struct LumpVolume(double CubicMillimetres, VolumeShape Shape)
{
    /// <summary>The volume of one to three diameters; a diameter that is not known is taken as the shortest that is.</summary>
    public static LumpVolume Of(ImmutableArray<decimal> diameters)
    {
        double shortest = (double)diameters.Min();
        double product = 1;
        for (int index = 0; index < 3; index++)
        {
            product *= index < diameters.Length ? (double)diameters[index] : shortest;
        }

        VolumeShape shape = diameters.Length switch { 1 => VolumeShape.Sphere, 2 => VolumeShape.Spheroid, _ => VolumeShape.Ellipsoid };
        return new LumpVolume(Math.PI / 6 * product, shape);
    }
}
