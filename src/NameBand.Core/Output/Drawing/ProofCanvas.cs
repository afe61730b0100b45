namespace NameBand.Output.Drawing;

/// <summary>What a proof is drawn on: the part of the picture at hand, where its millimetres lie, and the face of its captions.</summary>
internal readonly record struct ProofCanvas(IndexedBitmap Picture, ProofPage Page, CaptionFace Face);
