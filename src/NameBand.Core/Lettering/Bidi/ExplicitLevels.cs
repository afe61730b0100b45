namespace NameBand.Lettering.Bidi;

/// <summary>Rules X1 to X8: levels from explicit embeddings, overrides and isolates, and the classes after overrides.</summary>
internal sealed class ExplicitLevels
{
    private const int MaxDepth = 125; // max_depth of UAX 9, BD2.

    private readonly Stack<(byte Level, BidiClass? Override, bool Isolate)> _stack = new();
    private readonly int _paragraphLevel;
    private int _overflowIsolates;
    private int _overflowEmbeddings;
    private int _validIsolates;

    private ExplicitLevels(ReadOnlySpan<BidiClass> classes, int paragraphLevel)
    {
        Classes = classes.ToArray();
        Levels = new byte[classes.Length];
        _paragraphLevel = paragraphLevel;
        Restart();
    }

    public BidiClass[] Classes { get; }

    public byte[] Levels { get; }

    /// <summary>Rule X9.</summary>
    public static bool IsRemoved(BidiClass type) => type is BidiClass.RLE or BidiClass.LRE or BidiClass.RLO
        or BidiClass.LRO or BidiClass.PDF or BidiClass.BN;

    public static ExplicitLevels Find(ReadOnlySpan<BidiClass> classes, int[] matches, int paragraphLevel)
    {
        var found = new ExplicitLevels(classes, paragraphLevel);
        for (int i = 0; i < classes.Length; i++)
        {
            found.Step(classes, matches, i);
        }

        return found;
    }

    private void Step(ReadOnlySpan<BidiClass> classes, int[] matches, int i)
    {
        var type = classes[i];
        switch (type)
        {
            case BidiClass.RLE or BidiClass.LRE or BidiClass.RLO or BidiClass.LRO:
                Levels[i] = _stack.Peek().Level;
                Embed(type);
                break;
            case BidiClass.RLI or BidiClass.LRI or BidiClass.FSI:
                Set(i);
                bool rightToLeft = type == BidiClass.RLI
                    || (type == BidiClass.FSI && Isolates.FirstStrong(classes, matches, i + 1, matches[i]) == 1);
                Isolate(rightToLeft);
                break;
            case BidiClass.PDI:
                EndIsolate();
                Set(i);
                break;
            case BidiClass.PDF:
                EndEmbedding();
                Levels[i] = _stack.Peek().Level;
                break;
            case BidiClass.B:
                Restart();
                Levels[i] = (byte)_paragraphLevel;
                break;
            case BidiClass.BN:
                Levels[i] = _stack.Peek().Level;
                break;
            default:
                Set(i);
                break;
        }
    }

    private void Restart()
    {
        _stack.Clear();
        _stack.Push(((byte)_paragraphLevel, null, false));
        _overflowIsolates = _overflowEmbeddings = _validIsolates = 0;
    }

    private void Set(int i)
    {
        var top = _stack.Peek();
        Levels[i] = top.Level;
        Classes[i] = top.Override ?? Classes[i];
    }

    private int NextLevel(bool rightToLeft)
    {
        int level = _stack.Peek().Level;
        return rightToLeft ? (level + 1) | 1 : (level + 2) & ~1;
    }

    private void Embed(BidiClass type)
    {
        int next = NextLevel(type is BidiClass.RLE or BidiClass.RLO);
        if (next <= MaxDepth && _overflowIsolates == 0 && _overflowEmbeddings == 0)
        {
            BidiClass? forced = type switch { BidiClass.RLO => BidiClass.R, BidiClass.LRO => BidiClass.L, _ => null };
            _stack.Push(((byte)next, forced, false));
        }
        else if (_overflowIsolates == 0)
        {
            _overflowEmbeddings++;
        }
    }

    private void Isolate(bool rightToLeft)
    {
        int next = NextLevel(rightToLeft);
        if (next <= MaxDepth && _overflowIsolates == 0 && _overflowEmbeddings == 0)
        {
            _validIsolates++;
            _stack.Push(((byte)next, null, true));
        }
        else
        {
            _overflowIsolates++;
        }
    }

    private void EndIsolate()
    {
        if (_overflowIsolates > 0)
        {
            _overflowIsolates--;
        }
        else if (_validIsolates > 0)
        {
            _overflowEmbeddings = 0;
            while (!_stack.Peek().Isolate)
            {
                _stack.Pop();
            }

            _stack.Pop();
            _validIsolates--;
        }
    }

    private void EndEmbedding()
    {
        if (_overflowIsolates > 0)
        {
            return;
        }

        if (_overflowEmbeddings > 0)
        {
            _overflowEmbeddings--;
        }
        else if (!_stack.Peek().Isolate && _stack.Count >= 2)
        {
            _stack.Pop();
        }
    }
}
