using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using SkiaSharp;

namespace NameBand.Lettering.Outlines;

/// <summary>
/// Takes a glyph's outline from HarfBuzz, in font units and unhinted. HarfBuzz and not Skia draws it, because Skia
/// hands out paths rounded to 1/4096 of the em, and because HarfBuzz checks every table of a stranger's font; its
/// .NET package lacks this part of the library, so it is called here.
/// </summary>
internal sealed partial class GlyphPen
{
    /// <summary>More points than the most ornate letter has; above it neither the uniting nor the stitching ends in good time.</summary>
    public const int MostPoints = 8000;

    private const string Library = "libHarfBuzzSharp";

    private static readonly nint Callbacks = MakeCallbacks();

    private readonly SKPathBuilder _path = new();
    private int _points;

    private GlyphPen()
    {
    }

    /// <summary>The outline with y down as Skia has it; null for a blank glyph. A path cut short after <see cref="MostPoints"/>
    /// has more points than that.</summary>
    public static SKPath? Draw(HarfBuzzSharp.Font font, int glyph)
    {
        var pen = new GlyphPen();
        var handle = GCHandle.Alloc(pen);
        try
        {
            hb_font_draw_glyph(font.Handle, (uint)glyph, Callbacks, GCHandle.ToIntPtr(handle));
            GC.KeepAlive(font);
        }
        finally
        {
            handle.Free();
        }

        using (pen._path)
        {
            return pen._points == 0 ? null : pen._path.Detach();
        }
    }

    private static unsafe nint MakeCallbacks()
    {
        nint functions = hb_draw_funcs_create();
        hb_draw_funcs_set_move_to_func(functions, &MoveTo, 0, 0);
        hb_draw_funcs_set_line_to_func(functions, &LineTo, 0, 0);
        hb_draw_funcs_set_quadratic_to_func(functions, &QuadTo, 0, 0);
        hb_draw_funcs_set_cubic_to_func(functions, &CubicTo, 0, 0);
        hb_draw_funcs_set_close_path_func(functions, &Close, 0, 0);
        hb_draw_funcs_make_immutable(functions);
        return functions;
    }

    /// <summary>The path to draw on, or null once there are too many points.</summary>
    private static SKPathBuilder? PathOf(nint pen, int morePoints)
    {
        var self = (GlyphPen)GCHandle.FromIntPtr(pen).Target!;
        if (self._points > MostPoints)
        {
            return null;
        }

        self._points += morePoints;
        return self._path;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void MoveTo(nint functions, nint pen, nint state, float x, float y, nint data) => PathOf(pen, 1)?.MoveTo(x, -y);

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void LineTo(nint functions, nint pen, nint state, float x, float y, nint data) => PathOf(pen, 1)?.LineTo(x, -y);

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void QuadTo(nint functions, nint pen, nint state, float cx, float cy, float x, float y, nint data) =>
        PathOf(pen, 2)?.QuadTo(cx, -cy, x, -y);

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void CubicTo(
        nint functions, nint pen, nint state, float ax, float ay, float bx, float by, float x, float y, nint data) =>
        PathOf(pen, 3)?.CubicTo(ax, -ay, bx, -by, x, -y);

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void Close(nint functions, nint pen, nint state, nint data) => PathOf(pen, 0)?.Close();

    [LibraryImport(Library)]
    private static partial void hb_font_draw_glyph(nint font, uint glyph, nint functions, nint pen);

    [LibraryImport(Library)]
    private static partial nint hb_draw_funcs_create();

    [LibraryImport(Library)]
    private static partial void hb_draw_funcs_make_immutable(nint functions);

    [LibraryImport(Library)]
    private static unsafe partial void hb_draw_funcs_set_move_to_func(
        nint functions, delegate* unmanaged[Cdecl]<nint, nint, nint, float, float, nint, void> call, nint data, nint destroy);

    [LibraryImport(Library)]
    private static unsafe partial void hb_draw_funcs_set_line_to_func(
        nint functions, delegate* unmanaged[Cdecl]<nint, nint, nint, float, float, nint, void> call, nint data, nint destroy);

    [LibraryImport(Library)]
    private static unsafe partial void hb_draw_funcs_set_quadratic_to_func(
        nint functions, delegate* unmanaged[Cdecl]<nint, nint, nint, float, float, float, float, nint, void> call, nint data, nint destroy);

    [LibraryImport(Library)]
    private static unsafe partial void hb_draw_funcs_set_cubic_to_func(
        nint functions, delegate* unmanaged[Cdecl]<nint, nint, nint, float, float, float, float, float, float, nint, void> call, nint data,
        nint destroy);

    [LibraryImport(Library)]
    private static unsafe partial void hb_draw_funcs_set_close_path_func(
        nint functions, delegate* unmanaged[Cdecl]<nint, nint, nint, nint, void> call, nint data, nint destroy);
}
