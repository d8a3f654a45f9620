namespace HealthNotes.Rendering.Photos;

/// <summary>A picture as a page holds it: upright, small, and without anything its file said of place, time or camera.</summary>
/// <param name="Jpeg">The picture, written anew as JPEG.</param>
/// <param name="Width">Its width in pixels.</param>
/// <param name="Height">Its height in pixels.</param>
internal sealed record ShrunkPhoto(byte[] Jpeg, int Width, int Height);
