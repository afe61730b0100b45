namespace NameBand.Tests.StitchQuality;

/// <summary>Names to try the way through a whole name with.</summary>
internal static class TrialNames
{
    /// <summary>Invented, fifteen letters each.</summary>
    public static readonly string[] All =
    [
        "Halvard Brindle", "Ottoline Farrows", "Quillon Tavisher", "Bryony Sedgwicke", "Ludovic Penhalow", "Sunniva Thwaites",
        "Maren Aldousson", "Withelmina Krupp",
        "Ismay Dunkerleys", "Fabian Oxenholme", "Jorrit Vandelaar", "Clementine Gower",
        "Xanthe Mirebrook", "Zebedee Plumtree", "Kirsten Jollivet", "Upton Raistricks",
        "Edwina Yarbrough", "Gideon Quennells", "Perpetua Wimbush", "Njord Illingborg",
    ];
}
