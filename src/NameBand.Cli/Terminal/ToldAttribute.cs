using System.ComponentModel;
using NameBand.Common;

namespace NameBand.Cli.Terminal;

/// <summary>What an option or an argument is for, said on the help pages in the language of whoever reads.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class ToldAttribute(string english) : DescriptionAttribute
{
    public override string Description => Said.OfKey(english).ToString();
}
