using System.Collections.Frozen;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>An answer to whether a name may be shown, in many languages; what is not known is for a person to read.</summary>
internal static class YesNo
{
    private static readonly FrozenSet<string> Yes = Set(
        "yes,y,yeah,yep,true,t,1,x,xx,on,ok,checked,selected,✓,✔,☑,✅,☒,ja,j,jawohl,wahr,oui,o,vrai,sí,si,s,verdadero,cierto,sì,vero,sim,verdadeiro,waar,sant,"
        + "sand,kyllä,kyl,joo,jah,tak,t,prawda,ano,áno,a,pravda,igen,i,igaz,da,adevărat,taip,jā,jo,po,evet,e,doğru,да,д,истина,так,вірно,ναι,αληθές,"
        + "نعم,بله,آری,כן,हाँ,हां,জি,হ্যাঁ,ஆம்,ใช่,có,vâng,ya,ndiyo,はい,○,◯,是,是的,对,예,네,այո,კი");

    private static readonly FrozenSet<string> Hide = Set(
        "anonymous,anonym,anonyme,anónimo,anónima,anonimo,anonima,anônimo,anoniem,аноним,анонім,匿名,private,privat,privé,privado,privato,hide,hidden");

    private static readonly FrozenSet<string> No = Set(
        "no,n,nope,false,f,0,-,–,—,off,none,unchecked,☐,✗,✘,✕,❌,nein,falsch,non,faux,falso,não,nao,nee,onwaar,nej,nei,falskt,usann,ei,nie,fałsz,"
        + "ne,nepravda,nem,hamis,nu,fals,ni,nē,hayır,hayir,h,yanlış,нет,н,ложь,ні,не,όχι,ψευδές,لا,خیر,نه,לא,नहीं,না,இல்லை,ไม่,ไม่ใช่,không,tidak,hapana,"
        + "いいえ,×,否,不,不是,아니요,아니오,ոչ,არა,n/a,na");

    private static readonly FrozenSet<string> Show = Set("public,publicly,öffentlich,show,shown,visible");

    /// <summary>Whether the answer asks for the name to be hidden; null when it cannot be told, also where it is blank.</summary>
    /// <param name="yesHides">What a plain yes means in the column. Words such as “private” or “public” mean the same in any.</param>
    public static bool? Hides(string cell, bool yesHides)
    {
        string word = Plain(cell);
        return Hide.Contains(word) ? true
            : Show.Contains(word) ? false
            : Yes.Contains(word) ? yesHides
            : No.Contains(word) ? !yesHides
            : null;
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
