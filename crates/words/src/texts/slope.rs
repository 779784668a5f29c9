//! Words about slopes: what a side rises, heights and where they come from, dips, ridges and further posts.

use crate::message::texts;

texts! {
    /// Words about slopes: what a side rises, heights and where they come from, dips, ridges and further posts.
    Slope {
        // The page about a run.
        Head: "Slope" => "Hang",
        Level: "taken as level" => "als eben angenommen",
        SurfaceSentence: "{level} on the map take {surface} of net on the ground, {more} more."
            => "{level} auf der Karte brauchen {surface} Netz am Boden, {more} mehr.",
        SurfaceEqual: "{level} on the map take as much net on the ground."
            => "{level} auf der Karte brauchen ebenso viel Netz am Boden.",
        RangeSentence: "The line climbs {range} in all; its steepest {over} rise {steep}."
            => "Die Linie steigt insgesamt um {range}; ihre steilsten {over} steigen um {steep}.",
        RiseHint: "From the first corner to the second: so much, or 1 in so many; a minus where it falls."
            => "Von der ersten Ecke zur zweiten: so viel, oder 1 : so viel; ein Minus, wo es fällt.",
        SurfaceAside: "{surface} on the ground" => "{surface} am Boden",
        KnownSide: "{how} for one side" => "{how} für eine Seite",
        KnownSides: "{how} for {count} sides" => "{how} für {count} Seiten",
        NoRise: "“{typed}” says no rise; type a rise such as {rise}, or how steep it is: 1 in 8, {share} or 7°."
            => "„{typed}“ sagt keinen Anstieg; eintippen, wie viel, etwa {rise}, oder wie steil: 1 : 8, {share} oder 7°.",
        OneUpIn: "1 in {count}" => "1 : {count}",
        OneDownIn: "−1 in {count}" => "−1 : {count}",
        MoreUneven: "{count} more panels like that; the map shows them all."
            => "Noch {count} solche Felder; die Karte zeigt sie alle.",
        AndLast: "{first} and {last}" => "{first} und {last}",
        RisesField: "{from} to {to} rises" => "{from} bis {to} steigt",
        RisesLabel: "What side {from} to {to} rises" => "Anstieg der Seite {from} bis {to}",
        GapField: "Gap allowed under the net" => "Erlaubter Spalt unter dem Netz",
        ShowSides: "Say what the sides rise" => "Anstieg der Seiten angeben",
        FoldSides: "Fold the sides" => "Seiten einklappen",
        Evidence: "Known {how}." => "Bekannt {how}.",
        ByHand: "by hand" => "von Hand",
        BySpots: "from the spot heights" => "aus den Höhenpunkten",
        ByGrid: "from the height grid" => "aus dem Höhenraster",
        ByLevel: "as level" => "als eben",
        DipsHead: "Dips and ridges" => "Senken und Kuppen",
        NoneUneven: "No panel leaves a gap above {gap}, and none drags."
            => "Kein Feld lässt einen Spalt über {gap}, und keines schleift.",
        DipRow: "From post {post}: gap {by}" => "Ab Pfahl {post}: Spalt {by}",
        RidgeRow: "From post {post}: ridge {by}" => "Ab Pfahl {post}: Kuppe {by}",
        BothRow: "From post {post}: gap {gap}, ridge {over}" => "Ab Pfahl {post}: Spalt {gap}, Kuppe {over}",
        PostRow: "a further post {along} on" => "ein Zusatzpfahl {along} weiter",
        PostsRow: "further posts {along} on" => "Zusatzpfähle {along} weiter",
        NoPostRow: "no post mends it" => "kein Pfahl behebt es",

        // The page about the ground.
        HeightsHead: "Heights" => "Höhen",
        HeightsNone: "No heights are known, so the ground is level. Put down two or more, or bring in a grid."
            => "Keine Höhen sind bekannt, das Gelände gilt daher als eben. Zwei oder mehr setzen oder ein Raster einlesen.",
        HeightsOne: "One height says nothing of a slope: put down another."
            => "Eine Höhe sagt nichts über einen Hang: eine zweite setzen.",
        HeightsMore: "The first {count} are not listed: click one on the map."
            => "Die ersten {count} sind nicht aufgeführt: eine auf der Karte anklicken.",
        HeightsSome: "{count} spot heights; only their differences count."
            => "{count} Höhenpunkte; nur ihre Unterschiede zählen.",
        PutHeight: "Put down a height" => "Höhe setzen",
        BringGrid: "Bring in a grid …" => "Raster einlesen …",
        BringGridTitle: "Bring in heights: Esri ASCII grid or GeoTIFF"
            => "Höhen einlesen: Esri ASCII Grid oder GeoTIFF",
        HeightRow: "Height {number}" => "Höhe {number}",
        HeightLabel: "Height {number}, up" => "Höhe {number}, aufwärts",
        GridSentence: "A grid of {columns} by {rows} heights, one every {cell}."
            => "Ein Raster von {columns} mal {rows} Höhen, eine alle {cell}.",
        GridHoles: "{holes} of them are holes." => "{holes} davon sind Lücken.",
        TakeGrid: "Take out the grid" => "Raster herausnehmen",
        HintHeight: "Click where you know the height; type it on the page. Esc leaves."
            => "Dorthin klicken, wo Sie die Höhe kennen; auf der Seite eintippen. Esc bricht ab.",

        // The report and the sheet.
        Row: "Slope" => "Hang",
        RowFigures: "{surface} on the ground for {level} on the map; steepest {steep}"
            => "{surface} am Boden für {level} auf der Karte; am steilsten {steep}",
        Uneven: "Dips and ridges" => "Senken, Kuppen",
        UnevenFigures: "{dips} dips, {ridges} ridges, {posts} further posts"
            => "Senken {dips}, Kuppen {ridges}, Zusatzpfähle {posts}",
        SheetAside: "gap allowed {gap}" => "erlaubter Spalt {gap}",
        SheetTakeOne: "further post for a dip or ridge" => "Zusatzpfahl für Unebenheit",
        SheetTake: "further posts for dips and ridges" => "Zusatzpfähle für Unebenheiten",
        GridTitle: "Heights were brought in" => "Höhen wurden eingelesen",

        // Findings.
        Steep: "{run}: the ground rises or falls {steep} over {over}, and above {limit} no net stands: look for heights in another unit or at another place, or lay the line elsewhere."
            => "{run}: Der Boden steigt oder fällt auf {over} um {steep}, und über {limit} steht kein Netz: nach Höhen in einer anderen Einheit oder an einem anderen Ort suchen oder die Linie anderswohin legen.",
        Dip: "{run}: under {panels} the ground leaves a gap of up to {gap} below the bottom line, and {allowed} is allowed."
            => "{run}: {panels} mit einer Senke, der Boden lässt dort bis zu {gap} Spalt unter der Bodenlitze, und {allowed} sind erlaubt.",
        Ridge: "{run}: under {panels} the ground rises up to {over} into the net, so that a live line drags."
            => "{run}: {panels} mit einer Kuppe, der Boden ragt dort bis zu {over} in das Netz, so dass eine stromführende Litze schleift.",
        PanelOne: "1 panel" => "1 Feld",
        Panels: "{count} panels" => "{count} Felder",
        FurtherPost: "Set a further post at the place marked" => "Einen Zusatzpfahl an die markierte Stelle setzen",
        FurtherPosts: "Set {count} further posts at the places marked"
            => "{count} Zusatzpfähle an die markierten Stellen setzen",
        FurtherSome: "Set {count} further posts at the places marked; peg down or fill the rest"
            => "Zusatzpfähle ({count}) an die markierten Stellen setzen; den Rest mit Heringen niederhalten oder auffüllen",
        NoFurther: "Peg the line down, fill the ground or lay the line elsewhere"
            => "Die Bodenlitze mit Heringen niederhalten, den Boden auffüllen oder die Linie anderswohin legen",
        UnevenWhy: "The bottom line is taut from post to post; the ground is known {how}."
            => "Die Bodenlitze ist von Pfahl zu Pfahl straff; der Boden ist {how} bekannt.",
        Unknown: "{run}: {length} of its line lie over holes of the height grid or off it; the ground is taken as straight there."
            => "{run}: {length} seiner Linie liegen über Lücken des Höhenrasters oder außerhalb; der Boden gilt dort als gerade.",
        Beyond: "{run}: {length} of its line lie beyond the outermost spot heights; the ground is taken as level off their edge."
            => "{run}: {length} seiner Linie liegen jenseits der äußersten Höhenpunkte; der Boden gilt von deren Rand an als eben.",
        GridOff: "{run}: the height grid lies elsewhere and says nothing of it; bring in one of this ground."
            => "{run}: Das Höhenraster liegt anderswo und sagt nichts darüber; eines von diesem Gelände einlesen.",
        RisesTooMuch: "{run}: round the ring its sides rise {by} more than they fall, so the line would end {by} above its start: {mend}."
            => "{run}: Rund um den Ring steigen seine Seiten um {by} mehr, als sie fallen, die Linie würde also {by} über ihrem Anfang enden: {mend}.",
        FallsTooMuch: "{run}: round the ring its sides fall {by} more than they rise, so the line would end {by} below its start: {mend}."
            => "{run}: Rund um den Ring fallen seine Seiten um {by} mehr, als sie steigen, die Linie würde also {by} unter ihrem Anfang enden: {mend}.",
        CorrectASide: "correct what a side is stated to rise" => "berichtigen, was eine Seite steigt",
        SayWhatFalls: "say how much it falls along {sides}, or correct a side"
            => "angeben, wie viel es auf diesen Seiten fällt ({sides}), oder eine Seite berichtigen",
        SayWhatRises: "say how much it rises along {sides}, or correct a side"
            => "angeben, wie viel es auf diesen Seiten steigt ({sides}), oder eine Seite berichtigen",
        SideNamed: "side {from} to {to}" => "Seite {from} bis {to}",
        TheOtherSides: "the {count} other sides" => "die anderen {count}",
        GridBroken: "The height grid has {heights} heights in rows of {columns}, or cells of no size: that is no grid, so bring it in again."
            => "Das Höhenraster hat {heights} Höhen in Zeilen zu {columns} oder Zellen ohne Größe: Das ist kein Raster, noch einmal einlesen.",
        GridCoarse: "The height grid has a height every {cell}: what dips under one panel cannot be seen in it."
            => "Das Höhenraster hat alle {cell} eine Höhe: Eine Senke unter einem einzelnen Feld ist darin nicht zu sehen.",

        // Files of heights that are not read.
        FileTooLarge: "{file} is too large for a clip of heights ({size}; at most {most}): cut the field out of it first."
            => "{file} ist zu groß für einen Ausschnitt mit Höhen ({size}; höchstens {most}): erst die Wiese herausschneiden.",
        NoGrid: "{file} is neither an Esri ASCII grid, which begins with ncols, nor a GeoTIFF: save the heights as one of the two."
            => "{file} ist weder ein Esri ASCII Grid, das mit ncols beginnt, noch ein GeoTIFF: die Höhen als eines von beiden speichern.",
        Header: "{file}: {key} is missing in the head of the grid or is no figure that it can be: correct it there."
            => "{file}: {key} fehlt im Kopf des Rasters oder ist keine mögliche Zahl: dort berichtigen.",
        NotANumber: "{file} has “{found}” at line {line} where a number belongs: correct it there or save the grid again."
            => "{file} hat „{found}“ in Zeile {line}, wo eine Zahl hingehört: dort berichtigen oder das Raster neu speichern.",
        HeightCount: "{file} has {found} heights where its head says {wanted}: save or copy it again."
            => "{file} hat {found} Höhen, wo der Kopf {wanted} sagt: neu speichern oder kopieren.",
        TiffUnread: "{file} cannot be read as a GeoTIFF ({problem}): save it again with one band, packed by deflate, LZW or not at all."
            => "{file} lässt sich nicht als GeoTIFF lesen ({problem}): neu speichern, mit einem Band, mit Deflate, LZW oder gar nicht gepackt.",
        TiffNoPlace: "{file} does not say where on the ground it lies: save it as a GeoTIFF with its place."
            => "{file} sagt nicht, wo im Gelände es liegt: als GeoTIFF mit seiner Lage speichern.",
        TiffTurned: "{file} has rows that do not run from west to east, the northern first: save it again north up."
            => "{file} hat Zeilen, die nicht von West nach Ost laufen, die nördliche zuerst: neu speichern, Norden oben.",
        OtherProjection: "{file} is in a projection that this program does not work with: save it in WGS 84 degrees or in a UTM zone of WGS 84."
            => "{file} hat eine Projektion, mit der dieses Programm nicht arbeitet: in WGS-84-Grad oder in einer UTM-Zone von WGS 84 speichern.",
        OtherProjectionCode: "{file} is in the projection EPSG {code}, which this program does not work with: save it in WGS 84 degrees (4326) or in a UTM zone of WGS 84 (326 or 327 and the zone)."
            => "{file} hat die Projektion EPSG {code}, mit der dieses Programm nicht arbeitet: in WGS-84-Grad (4326) oder in einer UTM-Zone von WGS 84 (326 oder 327 und die Zone) speichern.",
        OtherUnit: "{file} is not in metres and degrees (unit EPSG {code}): save it again with heights and lengths in metres."
            => "{file} ist nicht in Metern und Grad (Einheit EPSG {code}): neu speichern, mit Höhen und Längen in Metern.",
        GridNoOrigin: "{file} has its places on the globe, and the plan does not say where on the globe it lies: state its origin (latitude and longitude) first."
            => "{file} hat seine Orte auf dem Globus, und der Plan sagt nicht, wo auf dem Globus er liegt: erst seinen Nullpunkt (Breite und Länge) angeben.",
        CellSize: "{file} has cells of {cell}, which no survey of a field has in metres: look for another unit, or give the plan its origin where these are degrees."
            => "{file} hat Zellen von {cell}, wie sie keine Vermessung einer Wiese in Metern hat: nach einer anderen Einheit suchen oder dem Plan seinen Nullpunkt geben, falls dies Grad sind.",
        WrongPlace: "{file} lies {off} from the ground of this plan: bring in a clip of this ground, or check the plan’s origin."
            => "{file} liegt {off} vom Gelände dieses Plans entfernt: einen Ausschnitt dieses Geländes einlesen oder den Nullpunkt des Plans prüfen.",
        WrongPlaceFar: "{file} lies far from the ground of this plan: bring in a clip of this ground, or check the plan’s origin."
            => "{file} liegt weit vom Gelände dieses Plans entfernt: einen Ausschnitt dieses Geländes einlesen oder den Nullpunkt des Plans prüfen.",
        AllHoles: "{file} has no height over the ground of this plan, only holes: bring in a clip without them."
            => "{file} hat über dem Gelände dieses Plans keine Höhe, nur Lücken: einen Ausschnitt ohne sie einlesen.",
        SteepGrid: "{file}: {share} % of its neighbouring heights are steeper than {limit} %, so its heights are hardly metres: save it again with heights in metres."
            => "{file}: {share} % der benachbarten Höhen sind steiler als {limit} %, die Höhen sind also kaum Meter: neu speichern, mit Höhen in Metern.",
        TooManyHeights: "{file} has {count} heights over this ground, and a plan takes {most}: save it with larger cells or cut the field out of it."
            => "{file} hat {count} Höhen über diesem Gelände, und ein Plan nimmt {most}: mit größeren Zellen speichern oder die Wiese herausschneiden.",

        // What was noticed while reading heights.
        NoteHole: "One height is missing over the ground." => "Über dem Gelände fehlt eine Höhe.",
        NoteHoles: "{count} heights are missing over the ground." => "Über dem Gelände fehlen {count} Höhen.",
        NoteUtm: "The file does not say what its metres count from; they fit as UTM zone {zone} and were taken so."
            => "Die Datei sagt nicht, wovon ihre Meter zählen; sie passen als UTM-Zone {zone} und wurden so genommen.",
        NoteDegrees: "The file does not say so, but its places are degrees and were taken as WGS 84."
            => "Die Datei sagt es nicht, aber ihre Orte sind Grad und wurden als WGS 84 genommen.",
        NoteCoarse: "A height every {cell} shows no dip under a panel."
            => "Eine Höhe alle {cell} zeigt keine Senke unter einem Feld.",
    }
}
