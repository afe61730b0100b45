using System.Collections.Frozen;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>What a word answers.</summary>
internal enum Answer
{
    Yes,
    No,

    /// <summary>Says by itself that the name is to be hidden, whatever was asked.</summary>
    Hide,

    /// <summary>Says by itself that the name may be shown.</summary>
    Show,
}

/// <summary>An answer to whether a name may be shown, in many languages; what is not known is for a person to read.</summary>
internal static class YesNo
{
    // A count: “yes, with my full name, please” is an answer; a longer text is a remark that a person has to read.
    private const int MostWords = 8;

    private static readonly FrozenSet<string> Yes = Set(
        "yes,y,yeah,yep,true,t,1,x,xx,on,ok,checked,selected,✓,✔,☑,✅,☒,ja,j,jawohl,wahr,oui,o,vrai,sí,si,s,verdadero,cierto,sì,vero,sim,verdadeiro,waar,sant,"
        + "sand,kyllä,kyl,joo,jah,tak,t,prawda,ano,áno,a,pravda,igen,i,igaz,da,adevărat,taip,jā,jo,po,evet,e,doğru,да,д,истина,так,вірно,ναι,αληθές,"
        + "نعم,بله,آری,כן,हाँ,हां,জি,হ্যাঁ,ஆம்,ใช่,có,vâng,ya,ndiyo,はい,○,◯,是,是的,对,예,네,այո,კი");

    private static readonly FrozenSet<string> Hide = Set(
        "anonymous,anonymously,anonym,anonyme,anónimo,anónima,anonimo,anonima,anônimo,anônima,anoniem,anonymt,anonymní,anonimowo,anonimowy,névtelen,anonim,"
        + "аноним,анонимно,анонім,анонімно,ανώνυμα,ανώνυμος,مجهول,אנונימי,गुमनाम,匿名,익명,private,privat,privé,privée,privado,privada,privato,privata,hide,hidden,"
        + "verbergen,versteckt,masqué,caché,oculto,oculta,nascosto,nascosta,verborgen,dold,skjult,ukryte,ukryty,skryté,gizli,скрыть,скрыто,приховано,"
        + "do not show,dont show,not shown,do not display,dont display,do not publish,do not print,nicht zeigen,nicht anzeigen,nicht nennen,ne pas afficher,"
        + "no mostrar,non mostrare,não mostrar,niet tonen,visa inte,vis ikke,非公開,非表示,不公开,不公開,비공개");

    private static readonly FrozenSet<string> No = Set(
        "no,n,nope,false,f,0,-,–,—,off,none,unchecked,☐,✗,✘,✕,❌,nein,falsch,non,faux,falso,não,nao,nee,onwaar,nej,nei,falskt,usann,ei,nie,fałsz,"
        + "ne,nepravda,nem,hamis,nu,fals,ni,nē,hayır,hayir,h,yanlış,нет,н,ложь,ні,не,όχι,ψευδές,لا,خیر,نه,לא,नहीं,না,இல்லை,ไม่,ไม่ใช่,không,tidak,hapana,"
        + "いいえ,×,否,不,不是,아니요,아니오,ոչ,არა,n/a,na");

    private static readonly FrozenSet<string> Show = Set(
        "public,publicly,öffentlich,show,shown,visible,zeigen,anzeigen,publique,público,pública,pubblico,pubblica,openbaar,offentlig,offentligt,julkinen,"
        + "publiczne,publicznie,veřejné,verejné,nyilvános,публично,δημόσιο,公開,公开,공개");

    /// <summary>What a cell answers; null when it cannot be told, also where it is blank.</summary>
    public static Answer? Read(string cell)
    {
        string word = Plain(cell);
        return Hide.Contains(word) ? Answer.Hide
            : Show.Contains(word) ? Answer.Show
            : Yes.Contains(word) ? Answer.Yes
            : No.Contains(word) ? Answer.No
            : null;
    }

    /// <summary>Whether the answer asks for the name to be hidden; null when it cannot be told, also where it is blank.</summary>
    /// <param name="yesHides">What a plain yes means in the column; null: nobody has said. Words such as “private” or “public”
    /// mean the same in any.</param>
    public static bool? Hides(string cell, bool? yesHides) => Read(cell) switch
    {
        Answer.Hide => true,
        Answer.Show => false,
        Answer.Yes => yesHides,
        Answer.No => !yesHides,
        _ => null,
    };

    /// <summary>Whether it is a yes or a no, or begins with one: “No, thank you”.</summary>
    public static bool LooksLikeOne(string cell)
    {
        if (Read(cell) is not null)
        {
            return true;
        }

        string[] words = Plain(cell).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string first = words.Length is > 1 and <= MostWords ? words[0].TrimEnd(',', ';', ':') : "";
        return first.Length > 1 && !char.IsDigit(words[1][0]) && Read(first) is not null;
    }

    private static FrozenSet<string> Set(string words) => words.Split(',').Select(Plain).ToFrozenSet(StringComparer.Ordinal);

    private static string Plain(string cell)
    {
        string text = NameText.Clean(cell).Text;
        return string.Concat(Resemblance.Fold(PlainText.Normal(text, System.Text.NormalizationForm.FormKD))
            .EnumerateRunes().Where(r => !Resemblance.IsAccent(r.Value) && r.Value is not ('.' or '!' or '\'' or 0x2019 or 0xFE0F))
            .Select(r => r.ToString())).Trim();
    }
}
