package greyground.app.print;

import greyground.film.sheet.PrintPaper;
import greyground.film.sheet.SheetOnPaper;
import greyground.film.sheet.SheetOnPaper.SheetSize;
import greyground.quantity.Resolution;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import javax.print.DocFlavor;
import javax.print.PrintService;
import javax.print.attribute.Attribute;
import javax.print.attribute.HashAttributeSet;
import javax.print.attribute.HashPrintRequestAttributeSet;
import javax.print.attribute.PrintRequestAttributeSet;
import javax.print.attribute.ResolutionSyntax;
import javax.print.attribute.standard.Copies;
import javax.print.attribute.standard.JobName;
import javax.print.attribute.standard.Media;
import javax.print.attribute.standard.MediaPrintableArea;
import javax.print.attribute.standard.MediaSize;
import javax.print.attribute.standard.MediaSizeName;
import javax.print.attribute.standard.PrinterResolution;
import org.jspecify.annotations.Nullable;

/** A printer that this machine can print with: its papers, and the resolutions it owns to. Immutable. */
public final class PrinterAtHand {
    static final DocFlavor PAGES = DocFlavor.SERVICE_FORMATTED.PAGEABLE;

    private final PrintService service;
    private final Map<PrintPaper, MediaSizeName> papers;
    private final TreeSet<Integer> resolutions = new TreeSet<>();

    private PrinterAtHand(PrintService service) {
        this.service = service;
        this.papers = papersOf(service);
        if (service.getSupportedAttributeValues(PrinterResolution.class, PAGES, null)
                instanceof PrinterResolution[] known) {
            for (PrinterResolution each : known) {
                resolutions.add(each.getCrossFeedResolution(ResolutionSyntax.DPI));
            }
        }
    }

    /** Asks a printer what it can do, which may take a moment. */
    public static PrinterAtHand of(PrintService service) {
        return new PrinterAtHand(service);
    }

    private static Map<PrintPaper, MediaSizeName> papersOf(PrintService service) {
        Map<PrintPaper, MediaSizeName> papers = new LinkedHashMap<>();
        Object media = service.getSupportedAttributeValues(Media.class, PAGES, null);
        if (media instanceof Object[] all) {
            for (Object each : all) {
                if (each instanceof MediaSizeName name) {
                    Optional.ofNullable(MediaSize.getMediaSizeForName(name))
                            .ifPresent(size -> papers.put(paper(service, name, size), name));
                }
            }
        }
        return papers;
    }

    private static PrintPaper paper(PrintService service, MediaSizeName name, MediaSize size) {
        double width = size.getX(MediaSize.MM);
        double height = size.getY(MediaSize.MM);
        Object areas = service.getSupportedAttributeValues(MediaPrintableArea.class, PAGES, new HashAttributeSet(name));
        String words = name.toString().replaceFirst("^(iso|jis|na)-", "").replace('-', ' ');
        if (areas instanceof MediaPrintableArea[] known && known.length > 0) {
            int millimetres = MediaPrintableArea.MM;
            return new PrintPaper(
                    words,
                    width,
                    height,
                    known[0].getX(millimetres),
                    known[0].getY(millimetres),
                    Math.min(width, known[0].getWidth(millimetres)),
                    Math.min(height, known[0].getHeight(millimetres)));
        }
        return new PrintPaper(words, width, height, 0, 0, width, height);
    }

    public String name() {
        return service.getName();
    }

    /** Papers it knows, the smallest that a sheet goes on first; those too small come last. */
    public List<PrintPaper> papersFor(SheetSize sheet) {
        List<PrintPaper> sorted = new ArrayList<>(papers.keySet());
        sorted.sort(Comparator.<PrintPaper, Boolean>comparing(
                        paper -> SheetOnPaper.lay(sheet, paper).isEmpty())
                .thenComparing(paper -> paper.width() * paper.height()));
        return sorted;
    }

    /** Paper of the sheet's own size, for rolls and for sizes that the printer does not name. */
    public static PrintPaper ownSize(SheetSize sheet) {
        double width = sheet.widthMillimetres();
        double height = sheet.heightMillimetres();
        return new PrintPaper("sheet of its own size", width, height, 0, 0, width, height);
    }

    /** What stands in the way of the film's own dots, as far as the printer tells; empty where nothing does. */
    public Optional<String> resolutionWarning(Resolution film) {
        if (resolutions.isEmpty() || resolutions.contains((int) Math.round(film.dotsPerInch()))) {
            return Optional.empty();
        }
        String known =
                String.join(", ", resolutions.stream().map(String::valueOf).toList());
        return Optional.of(String.format(
                Locale.ROOT,
                "this printer names %s dpi and the film has %.0f: its driver will make other dots of them; set Film printer at the"
                        + " station Film to one of these",
                known,
                film.dotsPerInch()));
    }

    PrintService service() {
        return service;
    }

    PrintRequestAttributeSet request(PrintPaper paper, int copies, Resolution film, String title) {
        PrintRequestAttributeSet request = new HashPrintRequestAttributeSet();
        add(request, papers.get(paper));
        if (copies > 1) {
            request.add(new Copies(copies));
        }
        if (resolutions.contains((int) Math.round(film.dotsPerInch()))) {
            int dots = (int) Math.round(film.dotsPerInch());
            add(request, new PrinterResolution(dots, dots, ResolutionSyntax.DPI));
        }
        request.add(new JobName(title.isEmpty() ? "film" : title, Locale.ROOT));
        return request;
    }

    private void add(PrintRequestAttributeSet request, @Nullable Attribute wish) {
        if (wish != null && service.isAttributeValueSupported(wish, PAGES, null)) {
            request.add(wish);
        }
    }

    @Override
    public String toString() {
        return name();
    }
}
