package greyground.cli;

import greyground.app.Greyground;
import greyground.app.files.KeptFiles;
import greyground.app.files.NamedFiles;
import greyground.app.files.ShopFile;
import greyground.app.inks.InkReadWork;
import greyground.app.teach.ReadFiles;
import greyground.app.teach.ReadOutcome;
import greyground.app.teach.ReadWords;
import greyground.app.teach.ReadWork;
import greyground.finding.Findings;
import greyground.quantity.Lengths;
import greyground.quantity.Refusal;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads a test plate's proof back. */
@Command(
        name = "read",
        sortOptions = false,
        customSynopsis = {
            "greyground read SCAN --wedge=TEST.pdf --workshop=SHOP.json [OPTION...]",
            "       greyground read --film=FILE.csv --workshop=SHOP.json [OPTION...]",
            "       greyground read --take-back --workshop=SHOP.json",
            "       greyground read SCAN --wedge=INKTEST.pdf --out=INKS.json [--measured=FILE.csv] [OPTION...]"
        },
        description = {
            "Reads the scanned proof of a test plate, says how the workshop's tones print and which of its numbers that shows,"
                    + " and with --accept takes it into the workshop: later films made alike get their curve from it.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground read proof.tif --wedge test.pdf --workshop shop.json --depth 34um --curve tones.png",
            "      what the plate says, and its tones drawn; nothing is changed",
            "  greyground read proof.tif --wedge test.pdf --workshop shop.json --depth 34um --accept",
            "      the same, taken into shop.json; what that held is kept as shop.before-1-DATE-CHART.json",
            "  greyground read --values fields.csv --wedge test.pdf --workshop shop.json",
            "      from densities typed in: a line 'row,column,density', then one for each field read",
            "  greyground read --film strip.csv --ruler-across 100.4mm --wedge still.pdf \\",
            "             --workshop shop.json --accept",
            "      the film printer's densities, dot growth and scale, from any film that it printed",
            "  greyground read print.tif --wedge colours.pdf --measured colours.csv --out learnt.json",
            "      a set's inks as their test plates printed them, for 'plates' and 'proof'",
            "  greyground read --take-back --workshop shop.json",
            "      the last lesson undone; what it taught is kept as shop.taken-back-1-DATE-CHART.json",
            "",
            "Scan in grey at 300 to 600 pixels per inch, 16 bits if you can, every automatic correction off, with 10 mm of"
                    + " paper round the plate."
        })
final class ReadCommand implements Callable<Integer> {
    @Parameters(
            paramLabel = "SCAN",
            arity = "0..1",
            description = "the scanned proof, any picture that 'positive' opens, turned or mirrored as it may be")
    private @Nullable Path scan;

    @Option(
            names = "--wedge",
            paramLabel = "TEST.pdf",
            description = "the test plate's film, as 'wedge' made it; for --film and the rulers any film")
    private @Nullable Path wedge;

    @Option(
            names = "--workshop",
            paramLabel = "SHOP.json",
            description =
                    "the workshop to teach; one that does not exist yet begins as the film's own, on --accept; of inks'"
                            + " test plates the workshop that made them (usual: the films' own)")
    private @Nullable Path workshop;

    @Option(
            names = "--out",
            paramLabel = "INKS.json",
            description = "of inks' test plates: the file of the inks as they printed")
    private @Nullable Path learnt;

    @Option(
            names = "--measured",
            paramLabel = "FILE.csv",
            description =
                    "colours of fields of the very print that was scanned, by a spectrophotometer (D50, 2 degrees): a header line"
                            + " row,column,L*,a*,b*, then one for each; row 0, column 0 is the bare sheet")
    private @Nullable Path measured;

    @Option(names = "--accept", description = "take what was read into the workshop, keeping what it held")
    private boolean accept;

    @Option(names = "--take-back", description = "undo the last lesson that the workshop was taught")
    private boolean takeBack;

    @Option(
            names = "--values",
            paramLabel = "FILE.csv",
            description =
                    "readings typed in instead of a scan: a header line of row,column (or coverage, in %%) and density or L*, then one line for each field; semicolons and decimal commas will do")
    private @Nullable Path values;

    @Option(
            names = "--reference",
            paramLabel = "FILE.csv",
            description =
                    "a reflection wedge that lies on the scan: x,y,side,density, the middle and side of each patch in scan pixels")
    private @Nullable Path reference;

    /** What is told of a proof beside its scan; {@code app.teach} reads the words. */
    @Mixin
    CommandSpec proof = JobOptions.of(
            JobOptions.word(
                    "--depth",
                    "LENGTH",
                    "how deep the bare strip was measured to be, such as 34um: gives the bath's rate"),
            JobOptions.word(
                    "--bite", "TIME", "how long the plate was bitten, such as 22min (usual: as its film's plan says)"),
            JobOptions.word(
                    "--paper",
                    "WHITE",
                    "the bare sheet's L* or density, such as 95 or 0.06 (usual: as in the workshop)"),
            JobOptions.word("--flare", "SHARE", "stray light that the scanner adds to darks, such as 1% (usual: 0%)"),
            JobOptions.word(
                    "--corners",
                    "PLACES",
                    "where the plate lies, if its codes can't be found: its four corners in scan pixels, as the print reads from the top left clockwise, such as \"120,95 1890,101 1884,2460 115,2452\""),
            JobOptions.word("--date", "DATE", "when the proof was printed, as 2026-03-04 (usual: today)"));

    @Option(
            names = "--film",
            paramLabel = "FILE.csv",
            description =
                    "densities of the film's own strip, to learn the film printer: a header line of coverage (in %%) and density"
                            + " (ultraviolet), visual, or step (of a transmission wedge that looks the same in the developed"
                            + " resist), then one line for each field")
    private @Nullable Path readings;

    @Option(
            names = "--ruler-across",
            paramLabel = "LENGTH",
            description = "what the film's ruler of 100 mm above the plate measures, such as 100.4mm")
    private @Nullable String rulerAcross;

    @Option(
            names = "--ruler-down",
            paramLabel = "LENGTH",
            description = "the same of the ruler beside the plate, such as 99.8mm")
    private @Nullable String rulerDown;

    @Option(
            names = "--curve",
            paramLabel = "FILE",
            description = "the tones as measured and as predicted, as .svg, .png or .pdf")
    private @Nullable Path curve;

    @Option(
            names = "--overlay",
            paramLabel = "PICTURE.png",
            description = "the scan with every field that was read, and its tone, drawn over it")
    private @Nullable Path overlay;

    @Mixin
    Terminal terminal;

    @Spec
    CommandSpec command = CommandSpec.create();

    ReadCommand(PrintStream out, PrintStream err) {
        terminal = new Terminal(out, err);
    }

    @Override
    public Integer call() throws IOException {
        if (learnt != null) {
            return readInks(learnt);
        }
        if (measured != null) {
            throw Refusal.use("--measured belongs to the print of inks' test plates: add --out INKS.json");
        }
        if (takeBack) {
            return takenBack();
        }
        return filmIsMeasured() ? printedFilm() : read();
    }

    private int readInks(Path out) throws IOException {
        if (accept
                || takeBack
                || filmIsMeasured()
                || values != null
                || reference != null
                || curve != null
                || overlay != null) {
            throw Refusal.use("--out is for what the print of inks' test plates teaches; with it go only SCAN, --wedge,"
                    + " --measured, --workshop, --corners, --flare and --date: leave the rest out");
        }
        Path films = needed(wedge, "no films of inks' test plates are given: add --wedge INKTEST.pdf");
        Path print = needed(scan, "nothing to read is given: name a scan of the print, in colour");
        new NamedFiles()
                .reads("scan", scan)
                .reads("films", films)
                .reads("colours", measured)
                .reads("workshop", workshop)
                .writes("inks", out, NamedFiles.Content.KEPT);
        InkReadWork work = Greyground.inkReading(
                films,
                Optional.ofNullable(workshop).map(KeptFiles::workshop),
                new ReadWords(JobOptions.given(command.commandLine().getParseResult())),
                LocalDate.now(ZoneId.systemDefault()));
        Findings findings =
                terminal.watching(progress -> work.read(print, Optional.ofNullable(measured), out, progress::show));
        terminal.tell(Map.of("inks", out), findings);
        return CommandLine.done();
    }

    private Path shop() {
        return needed(workshop, "no workshop is given: add --workshop SHOP.json, the workshop to teach");
    }

    private int takenBack() throws IOException {
        if (accept || scan != null || values != null || wedge != null || filmIsMeasured()) {
            throw Refusal.use("--take-back undoes the last lesson and reads nothing: give it --workshop alone");
        }
        ShopFile.TakenBack done = Greyground.workshop(shop()).takeBack();
        terminal.tell(
                Map.of(),
                new Findings()
                        .say(
                                "workshop",
                                shop() + " is as it was before its last lesson (from "
                                        + done.restored().getFileName() + ")",
                                shop().toString())
                        .put("restoredFrom", done.restored().toString())
                        .say(
                                "replacedKept",
                                "what it held until now, as " + done.replaced().getFileName(),
                                done.replaced().toString()));
        return CommandLine.done();
    }

    private int printedFilm() throws IOException {
        Path film = needed(wedge, "no film is given: add --wedge FILM.pdf, the film that was measured");
        if (scan != null || values != null || reference != null || curve != null || overlay != null) {
            throw Refusal.use(
                    "--film and the rulers are read on a film, a scan or --values on its proof: read one after the"
                            + " other");
        }
        NamedFiles named = named();
        ShopFile shop = Greyground.workshop(shop());
        ReadOutcome outcome = Greyground.filmReading(
                        film,
                        shop.workshop(),
                        new ReadWords(JobOptions.given(command.commandLine().getParseResult()))
                                .date(LocalDate.now(ZoneId.systemDefault())))
                .read(
                        Optional.ofNullable(readings),
                        millimetres("ruler across", rulerAcross),
                        millimetres("ruler down", rulerDown));
        Optional<Path> kept = accept ? Optional.of(shop.teach(outcome.accepted())) : Optional.empty();
        tell(outcome, new ReadFiles(named), kept);
        return CommandLine.done();
    }

    private int read() throws IOException {
        Path film = needed(wedge, "no test plate's film is given: add --wedge TEST.pdf");
        if ((scan == null) == (values == null)) {
            throw Refusal.use(
                    scan == null
                            ? "nothing to read is given: name a scan of the proof, or --values FILE.csv"
                            : "a scan and --values are both given: leave one of them out");
        }
        if (values != null && reference != null) {
            throw Refusal.use("--reference belongs to a scan, but --values is given: leave one of them out");
        }
        ReadFiles files = new ReadFiles(named());
        if (curve != null) {
            files.wantCurve(curve);
        }
        if (overlay != null) {
            if (scan == null) {
                throw Refusal.use("--overlay belongs to a scan, but --values is given: leave one of them out");
            }
            files.wantOverlay(overlay);
        }
        ShopFile shop = Greyground.workshop(shop());
        ReadWork work = Greyground.reading(
                film,
                shop.workshop(),
                new ReadWords(JobOptions.given(command.commandLine().getParseResult())),
                LocalDate.now(ZoneId.systemDefault()));
        if (accept) {
            work.checkTeaches();
        }
        Path typed = values;
        ReadOutcome outcome = terminal.watching(progress -> typed != null
                ? work.values(typed, progress::show)
                : work.scan(needed(scan, ""), Optional.ofNullable(reference), overlay != null, progress::show));
        files.write(outcome);
        Optional<Path> kept = accept ? Optional.of(shop.teach(outcome.accepted())) : Optional.empty();
        tell(outcome, files, kept);
        return CommandLine.done();
    }

    /** The workshop is written on {@code --accept} only, but no picture may ever take its place. */
    private NamedFiles named() {
        NamedFiles named = new NamedFiles()
                .reads("scan", scan)
                .reads("values", values)
                .reads("reference", reference)
                .reads("film", wedge)
                .reads("readings", readings);
        return accept ? named.writes("workshop", shop(), NamedFiles.Content.KEPT) : named.reads("workshop", shop());
    }

    private boolean filmIsMeasured() {
        return readings != null || rulerAcross != null || rulerDown != null;
    }

    private static Optional<Double> millimetres(String what, @Nullable String typed) {
        return Optional.ofNullable(typed).map(text -> Lengths.parseMillimetres(what, text));
    }

    private static Path needed(@Nullable Path given, String otherwise) {
        if (given == null) {
            throw Refusal.use(otherwise);
        }
        return given;
    }

    private void tell(ReadOutcome outcome, ReadFiles files, Optional<Path> kept) {
        Findings findings = outcome.findings().put("accepted", kept.isPresent());
        if (kept.isPresent()) {
            findings.say("workshop", shop() + " has learned this", shop().toString())
                    .say(
                            "kept",
                            "what it held before, as " + kept.get().getFileName()
                                    + "; --take-back puts it in place again",
                            kept.get().toString());
        } else {
            findings.say(
                    "workshop",
                    shop() + " is untouched"
                            + (outcome.lesson().isPresent()
                                    ? ": add --accept to take this into it"
                                    : ": there is nothing to accept"),
                    shop().toString());
        }
        terminal.tell(files.named(), findings);
    }
}
