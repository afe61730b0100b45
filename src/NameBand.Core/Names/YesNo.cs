using System.Collections.Frozen;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>A yes or a no in many languages; anything else is for a person to read.</summary>
internal static class YesNo
{
    private static readonly FrozenSet<string> Yes = Set(
        "yes,y,yeah,yep,true,t,1,x,xx,on,ok,checked,selected,✓,✔,☑,✅,☒,ja,j,jawohl,wahr,oui,o,vrai,sí,si,s,verdadero,cierto,sì,vero,sim,verdadeiro,waar,sant,"
        + "sand,kyllä,kyl,joo,jah,tak,t,prawda,ano,áno,a,pravda,igen,i,igaz,da,adevărat,taip,jā,jo,po,evet,e,doğru,да,д,истина,так,вірно,ναι,αληθές,"
        + "نعم,بله,آری,כן,हाँ,हां,জি,হ্যাঁ,ஆம்,ใช่,có,vâng,ya,ndiyo,はい,○,◯,是,是的,对,예,네,այո,კი,"
        + "anonymous,anonym,anonyme,anónimo,anónima,anonimo,anonima,anônimo,anoniem,аноним,анонім,匿名,private,privat,privé,privado,privato,hide,hidden");

    private static readonly FrozenSet<string> No = Set(
        "no,n,nope,false,f,0,-,–,—,off,none,unchecked,☐,✗,✘,✕,❌,nein,falsch,non,faux,falso,não,nao,nee,onwaar,nej,nei,falskt,usann,ei,nie,fałsz,"
        + "ne,nepravda,nem,hamis,nu,fals,ni,nē,hayır,hayir,h,yanlış,нет,н,ложь,ні,не,όχι,ψευδές,لا,خیر,نه,לא,नहीं,না,இல்லை,ไม่,ไม่ใช่,không,tidak,hapana,"
        + "いいえ,×,否,不,不是,아니요,아니오,ոչ,არა,public,öffentlich,show,n/a,na");

    /// <summary>True, false, or null when it is neither; blank is null too.</summary>
    public static bool? Read(string cell)
    {
        string word = Plain(cell);
        return Yes.Contains(word) ? true : No.Contains(word) ? false : null;
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
