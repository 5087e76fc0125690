package greyground.desk.model;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Pictures, jobs and films opened lately, latest first; kept between runs. */
public final class RecentFiles {
    private static final String NAME = "recent.json";
    private static final int MOST = 10;

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
            files.remove(files.size() - 1);
        }
        ObjectNode tree = JsonText.object();
        tree.put("greyground", "recent files");
        tree.put("version", 1);
        ArrayNode names = tree.putArray("files");
        files.forEach(each -> names.add(each.toString()));
        folder.keep("list of recent files", NAME, JsonText.print(tree));
    }
}
