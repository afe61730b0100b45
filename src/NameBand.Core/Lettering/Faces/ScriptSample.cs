using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Lettering.Faces;

/// <summary>Letters by which a face is judged to cover a script, and on which its strokes are measured.</summary>
/// <param name="Code">ISO 15924.</param>
/// <param name="Words">The script in words, for people.</param>
/// <param name="Letters">A face that has all of them is said to cover the script.</param>
internal sealed record ScriptSample(string Code, Said Words, string Letters)
{
    public static ImmutableArray<ScriptSample> All { get; } =
    [
        new("Latn", "Latin", "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"),
        new("Latn", "Latin of Central Europe", "ĄĆČĎĘĚĞİŁŃŇŐŘŚŠŞŤŮŰŹŻŽąćčďęěğıłńňőřśšşťůűźżžđ"),
        new("Latn", "Vietnamese", "ĂÂĐÊÔƠƯăâđêôơưạảấầẩẫậắằẳẵặẹẻẽếềểễệỉịọỏốồổỗộớờởỡợụủứừửữựỳỵỷỹ"),
        new("Grek", "Greek", "ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩαβγδεζηθικλμνξοπρστυφχψωάέήίόύώς"),
        new("Cyrl", "Cyrillic", "АБВГДЕЖЗИЙКЛМНОПРСТУФХЦЧШЩЬЮЯабвгдежзийклмнопрстуфхцчшщьюя"),
        new("Cyrl", "Ukrainian and Serbian", "ІЇЄҐЂЋЉЊЏЈіїєґђћљњџј"),
        new("Armn", "Armenian", "ԱԲԳԴԵԶԷԸԹԺԻԼԽԾԿՀՁՂՃՄՅՆՇՈաբգդեզէըթժիլխծկհձղճմյնշո"),
        new("Geor", "Georgian", "აბგდევზთიკლმნოპჟრსტუფქღყშჩცძწჭხჯჰ"),
        new("Hebr", "Hebrew", "אבגדהוזחטיכלמנסעפצקרשתךםןףץ"),
        new("Arab", "Arabic", "ابتثجحخدذرزسشصضطظعغفقكلمنهويءآأإؤئةى"),
        new("Arab", "Persian and Urdu", "پچژگکیٹڈڑںےہھ"),
        new("Deva", "Devanagari", "अआइईउऊएऐओऔकखगघचछजझटठडढणतथदधनपफबभमयरलवशषसह"),
        new("Beng", "Bengali", "অআইঈউঊএঐওঔকখগঘচছজঝটঠডঢণতথদধনপফবভমযরলশষসহ"),
        new("Guru", "Gurmukhi", "ਅਆਇਈਉਊਏਐਓਔਕਖਗਘਚਛਜਝਟਠਡਢਣਤਥਦਧਨਪਫਬਭਮਯਰਲਵਸਹ"),
        new("Taml", "Tamil", "அஆஇஈஉஊஎஏஐஒஓஔகஙசஞடணதநபமயரலவழளறன"),
        new("Thai", "Thai", "กขคฆงจฉชซฌญฎฏฐฑฒณดตถทธนบปผฝพฟภมยรลวศษสหฬอฮ"),
        new("Ethi", "Ethiopic", "ሀለሐመሠረሰሸቀበተቸነኘአከወዐዘየደጀገጠጨጸፀፈፐ"),
        new("Hira", "Japanese kana", "あいうえおかきくけこさしすせそたちつてとアイウエオカキクケコサシスセソ"),
        new("Hang", "Korean", "가나다라마바사아자차카타파하강김박최정윤한홍"),
        new("Hani", "Chinese and Japanese characters", "王李张陈林山川田中村木佐藤东東京国國美明子花春"),
    ];

    /// <summary>
    /// Whether a face has only some letters of a script, fewer than half of its first sample: those are signs (µ, π, Ω),
    /// and a name drawn with them would change its look in the middle.
    /// </summary>
    public static bool IsPatchy(Face face, string scriptCode)
    {
        var sample = All.FirstOrDefault(s => s.Code == scriptCode);
        return sample is not null && 2 * sample.Letters.Count(c => face.Has(c)) < sample.Letters.Length;
    }

    public bool IsCoveredBy(Face face) => Letters.All(c => face.Has(c));
}
