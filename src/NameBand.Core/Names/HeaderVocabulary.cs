namespace NameBand.Names;

/// <summary>
/// The words that <see cref="HeaderWords"/> knows, comma-separated. From general knowledge of the languages, no
/// single source; a column that is not known can always be named in job.json.
/// </summary>
internal static class HeaderVocabulary
{
    public const string Display =
        "display name,displayed name,name to show,name to display,name to be shown,name shown,shown name,show as,display as,shown as,"
        + "appears as,public name,credit name,credit as,credits,name for credits,name as it should appear,name to sew,name to stitch,"
        + "name to embroider,text to sew,text to stitch,text to embroider,name on strip,"
        + "Anzeigename,anzuzeigender Name,Name zum Anzeigen,angezeigter Name,Name auf dem Band,gewünschter Name,"
        + "nom affiché,nom à afficher,nom public,nom d'affichage,nom à broder,"
        + "nombre a mostrar,nombre para mostrar,nombre visible,nombre público,nombre a bordar,nombre que se muestra,"
        + "nome da mostrare,nome visualizzato,nome pubblico,nome da ricamare,nome de exibição,nome para exibição,nome a mostrar,nome a exibir,"
        + "weergavenaam,getoonde naam,te tonen naam,schermnaam,visningsnamn,visningsnavn,vist navn,navn som vises,näyttönimi,näytettävä nimi,"
        + "nazwa wyświetlana,wyświetlane imię,zobrazované jméno,zobrazované meno,megjelenített név,megjelenő név,nume afișat,görünen ad,görünen isim,"
        + "prikazano ime,отображаемое имя,имя для показа,ім'я для показу,показване име,εμφανιζόμενο όνομα,"
        + "الاسم المعروض,نام نمایشی,שם לתצוגה,שם תצוגה,दिखाने का नाम,प्रदर्शित नाम,ชื่อที่แสดง,tên hiển thị,nama tampilan,"
        + "表示名,表示する名前,掲載名,显示名称,显示名,展示名,顯示名稱,표시 이름,표시명";

    public const string FullName =
        "full name,complete name,whole name,first and last name,name and surname,"
        + "vollständiger Name,ganzer Name,voller Name,Vor- und Nachname,Vor- und Zuname,nom complet,nom et prénom,prénom et nom,nom prénom,prénom nom,"
        + "nombre completo,nombre y apellidos,nombre y apellido,nombres y apellidos,nome completo,nome e cognome,nome cognome,cognome e nome,"
        + "volledige naam,voor- en achternaam,fullständigt namn,för- och efternamn,fulde navn,fullt navn,for- og etternavn,fullt nafn,koko nimi,täisnimi,"
        + "imię i nazwisko,imię nazwisko,celé jméno,jméno a příjmení,celé meno,meno a priezvisko,teljes név,nume complet,nume și prenume,"
        + "ime i prezime,puno ime,ime in priimek,vardas pavardė,vārds uzvārds,полное имя,фио,имя и фамилия,повне ім'я,піб,пълно име,"
        + "ονοματεπώνυμο,πλήρες όνομα,ad soyad,adı soyadı,ad soyadı,tam ad,isim soyisim,الاسم الكامل,نام کامل,نام و نام خانوادگی,שם מלא,पूरा नाम,"
        + "ชื่อ-นามสกุล,ชื่อ นามสกุล,họ và tên,họ tên,nama lengkap,jina kamili,姓名,氏名,성명";

    public const string Name =
        "name,names,your name,Namen,nom,noms,votre nom,nombre,nombres,nome,nomi,nomes,naam,namen,namn,navn,nafn,nimi,nimet,namnet,"
        + "imię,imiona,jméno,jména,meno,név,nevek,nume,ime,imena,имя,имена,ім'я,імена,име,імя,όνομα,ονόματα,ad,adı,adınız,isim,adlar,isimler,"
        + "vardas,vārds,emri,izena,nom i cognoms,ainm,enw,oruko,orúkọ,pangalan,nama,ime i prezime,"
        + "اسم,الاسم,أسماء,نام,שם,שמות,नाम,নাম,ਨਾਮ,નામ,பெயர்,పేరు,ಹೆಸರು,പേര്,නම,ชื่อ,ຊື່,ឈ្មោះ,နာမည်,အမည်,tên,սახელი,სახელი,անուն,አም,ስም,"
        + "名前,お名前,なまえ,名字,名稱,名称,이름,성함";

    public const string OtherName =
        "nickname,nick,preferred name,known as,chosen name,alias,pseudonym,pen name,stage name,artist name,"
        + "Spitzname,Rufname,Künstlername,surnom,pseudonyme,pseudo,apodo,sobrenombre,soprannome,apelido preferido,bijnaam,roepnaam,smeknamn,kallenavn,"
        + "lempinimi,przydomek,pseudonim,přezdívka,becenév,poreclă,nadimak,прозвище,псевдоним,прізвисько,παρατσούκλι,takma ad,لقب,כינוי,उपनाम,"
        + "ニックネーム,愛称,昵称,暱稱,닉네임,별명";

    public const string GivenName =
        "first name,firstname,given name,given names,forename,forenames,christian name,middle name,Vorname,Vornamen,prénom,prénoms,"
        + "nombre de pila,primer nombre,segundo nombre,primeiro nome,nome próprio,voornaam,förnamn,fornavn,etunimi,eesnimi,křestní jméno,krstné meno,"
        + "keresztnév,utónév,prenume,vorname,личное имя,отчество,μικρό όνομα,الاسم الأول,שם פרטי,पहला नाम,ชื่อจริง,nama depan,名,下の名前,名前（名）,이름（명）";

    public const string FamilyName =
        "last name,lastname,surname,surnames,family name,second name,maiden name,Nachname,Familienname,Zuname,nom de famille,"
        + "apellido,apellidos,primer apellido,segundo apellido,cognome,cognomi,sobrenome,apelido,apelidos,último nome,achternaam,familienaam,efternamn,efternavn,etternavn,"
        + "sukunimi,perekonnanimi,nazwisko,příjmení,priezvisko,vezetéknév,családnév,nume de familie,prezime,priimek,pavardė,uzvārds,фамилия,прізвище,фамилно име,"
        + "επώνυμο,επίθετο,soyad,soyadı,soyisim,اسم العائلة,نام خانوادگی,שם משפחה,कुलनाम,นามสกุล,nama belakang,nama keluarga,姓,苗字,名字（姓）,성";

    public const string Person =
        "person,people,supporter,supporters,donor,donors,donator,giver,givers,backer,backers,sponsor,sponsors,contributor,contributors,"
        + "neighbour,neighbours,neighbor,neighbors,participant,participants,member,members,guest,guests,signature,inscription,dedication,wording,"
        + "Spender,Spenderin,Spender:in,Unterstützer,Unterstützerin,Pate,Patin,Teilnehmer,Teilnehmerin,Mitglied,Gast,Widmung,"
        + "donateur,donatrice,donateurs,soutien,soutiens,parrain,marraine,participants,donante,donantes,patrocinador,participante,"
        + "donatore,donatrice,sostenitore,sostenitrice,doador,doadora,apoiador,begunstiger,donateur,givare,giver,lahjoittaja,darczyńca,dárce,darca,támogató,"
        + "донор,жертвователь,участник,жертводавець,учасник,δωρητής,bağışçı,destekçi,متبرع,תורם,दाता,ผู้บริจาค,"
        + "寄付者,支援者,捐赠者,捐款人,支持者,贊助人,기부자,후원자";

    public const string LeaveOut =
        "private,hide,hidden,hide name,hide my name,not shown,keep private,keep secret,leave out,secret,confidential,no name please,without name,"
        + "nicht zeigen,nicht anzeigen,nicht nennen,privat,verbergen,geheim,verborgen,auslassen,"
        + "ne pas afficher,ne pas montrer,ne pas citer,privé,masquer,masqué,caché,confidentiel,no mostrar,no publicar,ocultar,oculto,privado,secreto,"
        + "non mostrare,non pubblicare,nascondi,nascosto,privato,riservato,não mostrar,não exibir,não publicar,"
        + "niet tonen,verborgen,privé,geheim,visa inte,visa ej,dölj,dold,vis ikke,skjul,skjult,älä näytä,piilota,yksityinen,"
        + "nie pokazuj,nie pokazywać,ukryj,prywatne,prywatny,nezobrazovat,skrýt,soukromé,nezobraziť,skryť,súkromné,ne jelenjen meg,rejtett,titkos,ascunde,ascuns,"
        + "gizle,gizli,gösterme,gösterilmesin,не показывать,скрыть,скрытый,приватно,не показувати,приховати,да не се показва,"
        + "να μην εμφανίζεται,κρυφό,απόκρυψη,لا تظهر,إخفاء,خاص,نمایش داده نشود,להסתיר,פרטי,न दिखाएँ,गोपनीय,ไม่แสดง,không hiển thị,sembunyikan,rahasia,"
        + "非公開,非表示,公開しない,不公开,不公開,隐藏,隱藏,保密,비공개,숨김,"
        + "keep me off,leave me off,leave me out,keep me out,keep it private,keep name private,name withheld,withhold name,no public mention,opt out,"
        + "nicht veröffentlichen,nicht erscheinen,nicht genannt werden,möchte nicht genannt werden,ohne Namensnennung,ohne Namen,keine Veröffentlichung,"
        + "ne pas publier,ne pas nommer,sans nom,rester anonyme,sin nombre,no aparecer,no nombrar,mantener en privado,senza nome,non nominare,sem nome,"
        + "niet publiceren,zonder naam,publicera inte,utan namn,utan att nämnas,ikke offentliggør,ikke publiser,uden navn,uten navn,älä julkaise,ilman nimeä,"
        + "nie publikować,nie wymieniać,bez nazwiska,nezveřejňovat,bez jména,nezverejňovať,ne tegyék közzé,név nélkül,nu publica,fără nume,ne objavi,ne objaviti,bez imena,"
        + "yayınlama,yayınlanmasın,не публиковать,не упоминать,без имени,не публікувати,без імені,да не се публикува,να μη δημοσιευθεί,"
        + "לא לפרסם,لا تنشر,منتشر نشود,न छापें,ไม่เปิดเผย,không công khai,jangan tampilkan,掲載しない,掲載不可,匿名希望,名前を出さない,不显示,不顯示,공개 안 함,공개하지 않음";

    public const string Public =
        "public,publicly,show publicly,shown publicly,may be shown,may show,may show name,ok to show,okay to show,can be shown,can we show your name,may we show your name,"
        + "show my name,consent to show,display publicly,visible,öffentlich,darf gezeigt werden,darf angezeigt werden,Name zeigen,visible publiquement,"
        + "público,pública,pubblico,pubblica,publiek,openbaar,offentlig,offentligt,julkinen,publiczne,veřejné,verejné,nyilvános,herkese açık,"
        + "публично,показывать,показувати,δημόσιο,公開,公开,公開可,공개,"
        + "consent,consent given,permission,permission given,permission granted,consent to display,consent to print,consent to publish,permission to show,permission to print,"
        + "permission to display,permission to publish,permission to use name,publish,publishable,release,name release,opt in,named publicly,list publicly,"
        + "Einwilligung,Einverständnis,einverstanden,Zustimmung,Erlaubnis,veröffentlichen,darf veröffentlicht werden,dürfen wir zeigen,dürfen wir den Namen zeigen,"
        + "dürfen wir Ihren Namen zeigen,dürfen wir deinen Namen zeigen,Namensnennung,Namensnennung erlaubt,mit Namensnennung,Name darf genannt werden,sichtbar,anzeigen,"
        + "consentement,autorisation,accord,affichage autorisé,publier,peut être affiché,pouvons-nous l'afficher,pouvons-nous afficher votre nom,afficher mon nom,"
        + "consentimiento,permiso,autorización,autorizo,publicar,se puede mostrar,podemos mostrarlo,podemos mostrar su nombre,podemos mostrar tu nombre,mostrar mi nombre,"
        + "consenso,permesso,autorizzazione,pubblicare,si può mostrare,possiamo mostrarlo,possiamo mostrare il nome,mostra il mio nome,"
        + "consentimento,permissão,autorização,podemos mostrar,podemos mostrar o nome,pode ser mostrado,mostrar meu nome,"
        + "toestemming,mag getoond worden,mogen we tonen,mogen we de naam tonen,tonen,naam tonen,zichtbaar,"
        + "samtycke,tillstånd,får visas,får vi visa namnet,får vi visa ditt namn,visa namnet,samtykke,tilladelse,tillatelse,må vises,må vi vise navnet,vis navnet,synlig,"
        + "suostumus,lupa,saa näyttää,saako näyttää,näkyvä,zgoda,zezwolenie,można pokazać,czy można pokazać,pokazać,widoczne,souhlas,svolení,smí se zobrazit,můžeme zobrazit,"
        + "súhlas,povolenie,môžeme zobraziť,hozzájárulás,engedély,megjeleníthető,megmutathatjuk,acord,permisiune,consimțământ,se poate afișa,putem afișa,"
        + "pristanak,dozvola,privola,smije se prikazati,soglasje,dovoljenje,izin,onay,gösterilebilir,gösterebilir miyiz,görünür,"
        + "согласие,разрешение,можно показывать,можно показать,можно ли показать,згода,дозвіл,можна показати,чи можна показати,съгласие,разрешение за показване,"
        + "συγκατάθεση,άδεια,συναίνεση,μπορούμε να το δείξουμε,موافقة,إذن,هل يمكن عرض الاسم,رضایت,اجازه,הסכמה,אישור,מותר להציג,सहमति,अनुमति,"
        + "ยินยอม,อนุญาต,đồng ý,cho phép,persetujuan,izin tampil,idhini,同意,掲載可,掲載してよい,表示可,同意显示,允许显示,允許顯示,同意公开,동의,공개 동의,표시 동의";

    /// <summary>Each line one meaning, its first word the one that stands for it.</summary>
    public static readonly string[] Private =
    [
        "mail,e-mail,email,mail address,e-mail address,email address,Mailadresse,E-Mail-Adresse,courriel,adresse mail,adresse e-mail,correo,correo electrónico,posta,posta elettronica,"
        + "e-post,epost,sähköposti,poczta,почта,электронная почта,пошта,e-posta,بريد,البريد الإلكتروني,דוא\"ל,אימייל,ईमेल,メール,メールアドレス,邮箱,電郵,이메일",
        "sum,amount,total,pledge,pledged,donation,gift,paid,price,Betrag,Summe,Spende,montant,don,somme,importe,cantidad,suma,donación,importo,somma,donazione,quantia,valor,"
        + "bedrag,belopp,beløb,beløp,summa,kwota,částka,suma,összeg,сумма,сума,ποσό,tutar,miktar,مبلغ,סכום,राशि,金額,金额,금액",
        "note,notes,comment,comments,message,remark,remarks,Bemerkung,Bemerkungen,Notiz,Anmerkung,Kommentar,Nachricht,remarque,remarques,commentaire,commentaires,"
        + "nota,notas,comentario,comentarios,mensaje,commento,messaggio,observação,opmerking,anteckning,kommentar,notat,bemærkning,huomautus,uwagi,uwaga,poznámka,megjegyzés,"
        + "примечание,комментарий,сообщение,примітка,коментар,σχόλιο,σημείωση,yorum,mesaj,ملاحظة,הערה,टिप्पणी,備考,メモ,コメント,备注,備註,비고,메모",
        "date,day,Datum,fecha,data,dato,päivä,dátum,дата,ημερομηνία,tarih,تاريخ,תאריך,तारीख,日付,日期,날짜",
        "time,timestamp,submitted at,created at,Zeit,Zeitstempel,heure,horodateur,hora,ora,tijd,время,タイムスタンプ,时间",
        "id,number,no,nr,order,order id,order number,reference,row,Nummer,Bestellnummer,numéro,número,numero,番号,编号,번호",
        "phone,telephone,tel,mobile,Telefon,Handy,téléphone,portable,teléfono,telefono,telefone,телефон,τηλέφωνο,電話,电话,전화",
        "address,street,Adresse,Straße,adresse,rue,dirección,indirizzo,endereço,adres,адрес,адреса,διεύθυνση,住所,地址,주소",
        "city,town,Ort,Stadt,ville,ciudad,città,cidade,stad,miasto,město,город,місто,πόλη,şehir,市,城市",
        "country,Land,pays,país,paese,kraj,země,страна,країна,χώρα,ülke,国,国家,국가",
        "postcode,zip,zip code,Postleitzahl,PLZ,code postal,código postal,郵便番号,邮编",
        "language,Sprache,langue,idioma,lingua,язык,мова,言語,语言",
        "age,birthday,date of birth,Geburtstag,Geburtsdatum,gender,pronouns,title,Anrede,company,organisation,organization,group,Firma,entreprise,empresa",
    ];

    // Single words of longer headers, such as "Name as it should appear on the cloak". The first are hardly ever part
    // of somebody's name; the second are sometimes, and count only where every other word of the header is known.
    public const string SureNameWords = "name,names,Namen,nombre,nombres,jméno,имя,ім'я,όνομα";
    public const string PerhapsNameWords = "nom,noms,nome,naam,namn,navn,imię,isim,nama";
    public const string FillWords =
        "of,the,a,your,my,our,their,for,as,it,should,on,in,to,be,will,is,and,or,please,how,what,this,list,form,contact,"
        + "der,die,das,des,dem,den,auf,für,und,als,de,du,la,le,les,des,sur,pour,et,votre,del,el,en,para,y,su,tu,della,il,sul,per,e,da,do,na,no,het,van,og,och,på,til";
    public const string ShowWords = "show,shown,display,displayed,appear,appears,appearing,stitch,stitched,sew,sewn,embroider,embroidered,"
        + "strip,band,hem,cloak,skirt,banner,garment,credit,credits,public,publicly,print,printed,anzeigen,angezeigt,zeigen,gezeigt,"
        + "erscheinen,sticken,gestickt,afficher,affiché,broder,brodé,mostrar,bordar,mostrare,ricamare,exibir,tonen,visas,vises";
    public const string GivenWords = "first,given,fore,christian,middle,prénom";
    public const string FamilyWords = "last,family,sur,surname,maiden,famille,apellido,apellidos,cognome";
    public const string WholeWords = "full,complete,whole,complet,completo,completa";
    public const string NotOfAPerson =
        "mail,email,file,user,username,login,company,organisation,organization,business,street,bank,account,card,"
        + "event,project,product,item,campaign,team,group,city,town,country,pet,school,tier,reward,domain,host,field,column,sheet,"
        + "firma,firmen,datei,entreprise,société,fichier,empresa,usuario,utente,azienda";
    public const string AnonymousStarts =
        "anonym,anonim,anónim,anoniem,анонім,аноним,ανώνυμ,匿名,익명,무기명,مجهول,ناشناس,אנונימי,अनाम,गुमनाम,ẩn danh,ไม่ระบุชื่อ,"
        + "remain anonym,stay anonym,wants to be anonym,be anonym,is anonym,give anonym,keep anonym,nimetön,névtelen";
    public const string HideStarts =
        "do not show,dont show,do not display,dont display,do not publish,dont publish,do not list,do not name,do not print,do not sew,do not stitch,"
        + "hide my,hide the,hide from,please hide,keep my name,keep me off,keep me out,leave me off,leave me out,leave my name,keep off,leave off,withhold,"
        + "rather not be,prefer not to be,would rather not,does not want,do not want,dont want,dont mention,do not mention,nicht öffentlich,not public,no public,"
        + "nicht zeigen,nicht nennen,nicht veröffentlichen,möchte nicht,will nicht,ne pas,no mostrar,no publicar,non mostrare,non pubblicare,não mostrar,não publicar,niet tonen";

    // Words of a header that asks for leave: “May we print it?”, “OK to display”, “Do not put me on it”.
    public const string MayWords =
        "may,can,could,ok,okay,consent,consents,permission,permit,permitted,agree,agrees,agreed,allow,allows,allowed,happy,willing,want,wants,wish,wishes,like,would,shall,fine";
    public const string NotWords = "not,dont,doesnt,never,without,no,hide,off,except,exclude,cannot,cant";
    public const string ToShowWords =
        "show,shown,showing,display,displayed,displaying,print,printed,printing,publish,published,publishing,sew,sewn,stitch,stitched,"
        + "embroider,embroidered,appear,appearing,list,listed,mention,mentioned,named,credit,credited,visible,public,publicly,include,included,feature,featured,reveal,revealed";
    public const string AskingWords =
        "we,i,you,us,me,it,he,she,they,them,this,that,his,her,their,do,does,did,are,am,have,has,if,at,by,with,any,all,put,use,used,using,publicly,out,"
        + "from,strip,hem,cloak,skirt,banner,garment,cloth,card,sign,wall,web,website,page,online,given,granted,supporter,supporters,person,donor,donors,giver,member";

    // Words of a header that asks of the web, and of other places where a name may be shown: one that names both asks of both.
    public const string WebWords =
        "web,website,websites,webpage,online,internet,homepage,webseite,webseiten,sitio,site,sito,hemsida,webbplats,nettside,hjemmeside,verkossa,сайт,сайте,интернет,интернете,ウェブ,ウェブサイト,オンライン,网站,網站,网上";
    public const string MediumWords =
        "strip,hem,cloak,skirt,banner,garment,cloth,card,sign,wall,sew,sewn,stitch,stitched,embroider,embroidered,print,printed,printing";

    // Parts of a header of any words that may have to do with showing a name: then it is asked about.
    public const string HintStems =
        "anonym,anonim,publi,visib,hidden,hide,secret,privat,privac,confiden,consent,permi,display,show,withh,optin,optout,disclos,reveal,"
        + "zeig,nennung,genannt,öffentlich,sichtbar,erlaubnis,einwillig,einverst,zustimm,geheim,verberg,affich,montrer,publier,autoris,accord,masqu,mostrar,ocult,permiso,autoriz,"
        + "mostrare,nascond,pubblic,consenso,permess,exibir,permiss,tonen,toestemm,openba,zichtb,geheim,visas,samtyck,tillåt,offentlig,samtykk,tillad,tillat,näyt,julki,suostum,"
        + "pokaz,zgoda,publik,ukry,zobraz,souhlas,skrý,súhlas,megjelen,hozzájár,nyilván,titkos,afiș,ascun,prikaz,dozvol,skri,göster,gizl,izin,показ,публи,соглас,разреш,скры,"
        + "згод,дозв,прихов,δημόσι,εμφαν,συγκατ,κρυφ,موافق,إظهار,عرض,خصوص,نمایش,محرمان,להציג,פרסום,הסכמ,פרטי,दिखा,सहमति,गोपन,แสดง,เปิดเผย,ยินยอม,hiển thị,công khai,đồng ý,tampil,rahasia,"
        + "公開,公开,非表示,表示,掲載,匿名,隐,隱,显示,顯示,同意,秘密,保密,공개,표시,동의,비밀";

    public const string TotalWords =
        "total,totals,subtotal,grand,sum,count,Summe,Gesamt,Gesamtsumme,Zwischensumme,Anzahl,totaux,somme,totale,totales,totaal,summa,totalt,yhteensä,"
        + "suma,razem,celkem,spolu,összesen,ukupno,skupaj,viso,kopā,kokku,итого,всего,усього,разом,общо,σύνολο,toplam,المجموع,الإجمالي,جمع,סהכ,कुल,รวม,tổng,jumlah,合計,总计,總計,合计,합계";

    // What a remark says that may be a wish not to be shown. The remark itself is never repeated.
    public const string Wishes =
        "anonym,anonim,anoniem,аноним,анонім,ανώνυμ,مجهول,אנונימי,匿名,익명,गुमनाम,not want to be,not wish to be,rather not be,prefer not,"
        + "do not show,dont show,do not name,dont name,do not print,dont print,do not publish,dont publish,do not list,dont list,do not display,dont display,"
        + "do not mention,dont mention,do not sew,dont sew,do not stitch,dont stitch,not to be named,not to be shown,not be named,not be shown,not be listed,not be mentioned,"
        + "keep me off,keep me out,leave me off,leave me out,leave my name,keep my name,hide my,without my name,no name please,name withheld,stay private,keep private,keep it private,"
        + "nicht nennen,nicht zeigen,nicht genannt,nicht gezeigt,nicht erscheinen,nicht veröffentlich,ohne namen,ohne nennung,ungenannt,lieber nicht,"
        + "ne pas afficher,ne pas montrer,ne pas citer,ne pas publier,ne pas nommer,sans nom,ne veut pas,ne souhaite pas,no mostrar,no publicar,no aparecer,sin nombre,"
        + "non mostrare,non pubblicare,senza nome,não mostrar,não publicar,sem nome,niet tonen,niet noemen,zonder naam,visa inte,inte synas,utan namn,vis ikke,ikke vise,uden navn,uten navn,"
        + "älä näytä,ei nimeä,nie pokazywać,nie publikować,bez nazwiska,nezveřejňovat,nezobrazovat,bez jména,név nélkül,fără nume,bez imena,gösterilmesin,не показывать,не публиковать,без имени,"
        + "не показувати,не публікувати,без імені,公開しない,載せないで,掲載しない,出さないで,不公开,不公開,不要显示,不要顯示,공개하지";
}
