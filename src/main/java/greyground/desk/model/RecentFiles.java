package greyground.desk.model;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.sight.LivePicture;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Scanner;

/** Pictures, jobs and films opened lately, latest first; kept between runs. */
public final class RecentFiles {
    private static final String NAME = "recent.json";
    private static final int MOST = 10;
    private static final int MOST_PIXELS = 1 << 18;
    private static final int OUTSIDE = 0xC8;

    private final DeskFolder folder;
    private final List<Path> files = new ArrayList<>();

    public RecentFiles(DeskFolder folder) {
        this.folder = folder;
        folder.read(NAME).ifPresent(this::take);
    }

    private void take(String text) {
        try {
            for (JsonNode file : JsonText.read("recent files", 1, text).path("files")) {
                files.add(Path.of(file.asText()));
            }
        } catch (Refusal | InvalidPathException spoilt) {
            // A list of names is no loss.
            files.clear();
        }
    }

    /** Those that are still there. */
    public List<Path> present() {
        return files.stream().filter(Files::isRegularFile).toList();
    }

    public void add(Path file) {
        Path whole = file.toAbsolutePath().normalize();
        files.remove(whole);
        files.add(0, whole);
        while (files.size() > MOST) {
            folder.forget(pictureName(files.remove(files.size() - 1)));
        }
        ObjectNode tree = JsonText.object();
        tree.put("greyground", "recent files");
        tree.put("version", 1);
        ArrayNode names = tree.putArray("files");
        files.forEach(each -> names.add(each.toString()));
        folder.keep("list of recent files", NAME, JsonText.print(tree));
    }

    private static String pictureName(Path file) {
        return String.format(
                Locale.ROOT,
                "recent-%08x.pgm",
                file.toAbsolutePath().normalize().toString().hashCode());
    }

    /** Keeps a small picture of what was made of a file, in greys, as a plain PGM (netpbm). */
    public void keepPicture(Path file, LivePicture small) {
        StringBuilder text = new StringBuilder("P2\n" + small.width() + " " + small.height() + "\n255\n");
        for (int y = 0; y < small.height(); y++) {
            for (int x = 0; x < small.width(); x++) {
                int pixel = small.pixels()[y * small.width() + x];
                // What lies outside the plate is as light as the bench.
                text.append(pixel >>> 24 == 0 ? OUTSIDE : pixel >> 8 & 0xFF).append(x % 16 == 15 ? '\n' : ' ');
            }
            text.append('\n');
        }
        folder.keep("small picture", pictureName(file), text.toString());
    }

    /** The small picture that was kept of a file; empty where there is none that can be read. */
    public Optional<LivePicture> picture(Path file) {
        return folder.read(pictureName(file)).flatMap(text -> {
            try (Scanner words = new Scanner(text)) {
                boolean plain = words.next().equals("P2");
                int width = words.nextInt();
                int height = words.nextInt();
                int most = words.nextInt();
                if (!plain || most != 255 || width < 1 || height < 1 || (long) width * height > MOST_PIXELS) {
                    return Optional.empty();
                }
                int[] pixels = new int[width * height];
                for (int i = 0; i < pixels.length; i++) {
                    pixels[i] = LivePicture.OPAQUE | (words.nextInt() & 0xFF) * 0x010101;
                }
                return Optional.of(new LivePicture(width, height, pixels));
            } catch (NoSuchElementException spoilt) {
                return Optional.empty();
            }
        });
    }
}
