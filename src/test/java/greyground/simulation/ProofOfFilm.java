package greyground.simulation;

import greyground.app.files.KeptFiles;
import greyground.app.recipe.JobPlate;
import greyground.film.job.Job;
import greyground.film.sheet.ChartFile;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;

/**
 * The scanned proof of any test plate's film, from an invented workshop that bites, wipes and prints by numbers of its own: for tests
 * from film to taught workshop, and for the guide's pictures.
 */
public final class ProofOfFilm {
    private ProofOfFilm() {}

    /**
     * Bites, prints and scans.
     *
     * @param film the test plate's PDF
     * @param shop which invented workshop
     * @param scan file to write, named .png
     */
    public static HiddenWorkshop scan(Path film, long shop, double pixelsPerInch, Path scan) throws Exception {
        HiddenWorkshop hidden = HiddenWorkshop.of(shop);
        Job job = KeptFiles.job(film);
        JobPlate plate = JobPlate.of(hidden.believed(), job);
        ShopTones tones = new ShopTones(hidden.truth(job), plate);
        Random random = new Random(shop * 104_729 + 11);
        double cell = Math.min(50, 0.55 * 25_400 / pixelsPerInch);
        PaintedPrint print = PaintedPrint.of(
                ChartFile.text(KeptFiles.chart(film)),
                tones,
                Wiping.of(random),
                random,
                cell,
                job.resolution().pitchMicrometres());
        Scanner any = Scanner.of(pixelsPerInch, new Random(shop));
        // A file without a profile is read as sRGB, so it must be coded so.
        Scanner scanner = new Scanner(
                pixelsPerInch,
                any.degrees(),
                any.mirrored(),
                any.skewX(),
                any.skewY(),
                any.blurPixels(),
                any.vignetting(),
                any.flare(),
                any.white(),
                any.noise(),
                Scanner.Coding.SRGB_8,
                any.dust());
        scanner.scan(print, random).write(scan, false);
        return hidden;
    }

    /** Film, number of the shop, pixels per inch, scan; and, if wished, a workshop file to write with the secret numbers, to proof other films in. */
    public static void main(String[] arguments) throws Exception {
        HiddenWorkshop shop = scan(
                Path.of(arguments[0]),
                Long.parseLong(arguments[1]),
                Double.parseDouble(arguments[2]),
                Path.of(arguments[3]));
        Workshop secret = shop.secret();
        double minutes = secret.bath().biteMinutes().value();
        Workshop bitten = secret.with(
                "bath.rateMicrometresPerMinute", Figure.assumed(shop.depthMicrometres() / minutes, "invented"));
        if (arguments.length > 4) {
            Files.writeString(Path.of(arguments[4]), WorkshopFile.text(bitten.named("what this shop really is")));
        }
        System.out.println("depth " + shop.depthMicrometres() + ", gauge " + shop.gauge());
        shop.secret().figures().forEach((path, figure) -> {
            if (figure.value() != shop.believed().figures().get(path).value()) {
                System.out.println(path + " " + figure.value());
            }
        });
    }
}
