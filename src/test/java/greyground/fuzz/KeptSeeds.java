package greyground.fuzz;

import greyground.cli.CommandLine;
import greyground.output.Attachment;
import greyground.output.FilmPdfReader;
import greyground.output.SmallFilm;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Makes sound films, jobs, workshops, plans, charts, readings and command lines, as seeds of mutation: argument FOLDER. */
final class KeptSeeds {
    private static final String SMALL =
            " --plate 30x30mm --resolution 720 --date 2026-03-31 --bevel 0mm --white 100% --black 0%";

    private static final List<String> TABLES = List.of(
            "row,column,density\n1,1,0.06\n1,2,0.6\n2,1,1.31\n",
            "coverage %;L*\n0;93,5\n45;60\n100;20\n",
            "x\ty\tside\td\n120\t95\t40\t0,06\n300\t95\t40\t1.5\n",
            "# strip\ncoverage,density\n0,0.1\n50,0.35\n100,2.5\n",
            "coverage,step\n0,1\n25,4\n75,12\n100,19\n");

    /** Short, so that mutation reaches every byte of them. */
    private static final List<String> SHORT = List.of(
            "{\"greyground\":\"job\",\"version\":1,\"plate\":{\"widthMillimetres\":40,\"heightMillimetres\":30}}",
            "{\"greyground\":\"workshop\",\"version\":1,\"name\":\"bench\",\"bath\":{\"etchFactor\":{\"value\":2.5,\"known\":"
                    + "\"measured\",\"date\":\"2026-03-31\",\"how\":\"by eye\"}},\"cat\":7}",
            "{\"greyground\":\"inks\",\"version\":1,\"inks\":[{\"name\":\"a\",\"lab\":[80,0,70]},{\"name\":\"b\"}],\"acceptance\":0.8,"
                    + "\"pairs\":[{\"inks\":[\"a\",\"b\"],\"acceptance\":0.7}],\"overprints\":[{\"inks\":[\"a\",\"b\"],\"lab\":[20,0,0]}]}",
            "{\"greyground\":\"chart\",\"version\":1,\"code\":\"GG1S0255S00N5C1JK0001214GGQ70\"}",
            "{\"greyground\":\"plan\",\"version\":1,\"summary\":\"s\",\"caution\":\"c\",\"steps\":[{\"title\":\"t\",\"seconds\":9,"
                    + "\"lines\":[],\"warnings\":[],\"advice\":[],\"cautions\":[]}]}");

    private static final List<String> LINES = List.of(
            "positive\nart.tif\n--plate\n200x250mm\n--out\nfilm.pdf\n--resolution\n1440dpi\n--grain\n180um\n--seed\n7",
            "positive\nart.tif\n--plate=8x10in\n--out\nf.pdf\n--ruling\n60/cm\n--angle\n45\n--dots\nline\n--crop\n10%,5%,80%,80%"
                    + "\n--rotate\n-90\n--white\n85%\n--black\n2%\n--paper-shrink\n1.5%,0.5%\n--bleed\n3mm\n--bevel\n2mm",
            "positive\nart.tif\n--plate\n20x25cm\n--process\nphotogravure\n--screen-black\n40%\n--screen-spacing\n120um\n--ink-side"
                    + "\ndown\n--transfers\n2\n--sheet\nautomatic\n--tile\n--range\nlightness\n--mend\n--title\nharbour",
            "wedge\n--plate\n150x200mm\n--out\ntest.pdf\n--kind\nexposure\n--date\n2026-03-31",
            "read\nproof.tif\n--wedge\ntest.pdf\n--workshop\nshop.json\n--depth\n34um\n--bite\n12min\n--flare\n1%\n--paper\nL*95"
                    + "\n--corners\n120,95 1890,101 1884,2460 115,2452",
            "plan\nfilm.pdf\n--depth\n30um\n--bitten\n12min\n--proof-density\n1.1\n--bath-temperature\n18C\n--bath-copper\n20g/L",
            "proof\nfilm.pdf\n--out\nprint.png\n--loupe\n60mm,80mm\n--bite\n5,10,20,40min\n--at\n300dpi");

    private KeptSeeds() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        Path films = Files.createDirectories(folder.resolve("film/seeds"));
        Path kept = Files.createDirectories(folder.resolve("kept/seeds"));
        Path art = Hostile.file("art.pgm", "P5 1 1 255\nx".getBytes(StandardCharsets.US_ASCII));
        Map<String, String> lines = Map.of(
                "positive", "positive " + art + SMALL + " --process photogravure",
                "wedge", "wedge --kind strip --plate 100x30mm --resolution 720 --date 2026-03-31",
                "check", "wedge --kind check --plate 100x100mm --resolution 720 --date 2026-03-31");
        for (Map.Entry<String, String> line : lines.entrySet()) {
            Map<String, byte[]> carried = carried(line.getKey(), line.getValue());
            for (Map.Entry<String, byte[]> each : carried.entrySet()) {
                Files.write(kept.resolve(line.getKey() + "-" + each.getKey()), each.getValue());
            }
            Files.write(films.resolve(line.getKey() + ".pdf"), SmallFilm.pdf(carried, false, ""));
            Files.write(films.resolve(line.getKey() + "-packed.pdf"), SmallFilm.pdf(carried, true, ""));
        }
        texts(kept, SHORT);
        texts(folder.resolve("tables/seeds"), TABLES);
        texts(folder.resolve("words/seeds"), LINES);
    }

    private static Map<String, byte[]> carried(String name, String line) throws IOException {
        Path film = Hostile.scratch().resolve(name + ".pdf");
        if (CommandLine.run((line + " --out " + film).split(" "), System.out, System.err) != 0) {
            throw new IllegalStateException(line);
        }
        Map<String, byte[]> carried = new TreeMap<>();
        try (FilmPdfReader reader = FilmPdfReader.open(film)) {
            for (String each : List.of(Attachment.JOB, Attachment.WORKSHOP, Attachment.PLAN, Attachment.CHART)) {
                reader.attachment(each).ifPresent(bytes -> carried.put(each, bytes));
            }
        }
        return carried;
    }

    private static void texts(Path folder, List<String> texts) throws IOException {
        Files.createDirectories(folder);
        for (int i = 0; i < texts.size(); i++) {
            Files.write(folder.resolve("seed-" + (i + 1)), texts.get(i).getBytes(StandardCharsets.UTF_8));
        }
    }
}
