package greyground.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.output.ExternalTool;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Colours against Little CMS, a colour library of others' (its program {@code transicc}). */
class OutsideColourTest {
    @TempDir
    Path folder;

    @Test
    void colourLibraryFindsTheSameLab() throws Exception {
        StringBuilder asked = new StringBuilder();
        for (int code = 0; code < 0x1000000; code += 0x052B3D) {
            asked.append(code >> 16)
                    .append(' ')
                    .append(code >> 8 & 0xFF)
                    .append(' ')
                    .append(code & 0xFF)
                    .append('\n');
        }
        Files.writeString(folder.resolve("codes.txt"), asked.toString());
        String said = ExternalTool.run(folder, "sh", "-c", "transicc '-i*sRGB' '-o*Lab' -t3 -c0 -n < codes.txt");
        List<String> rows =
                said.lines().filter(line -> line.matches("[-0-9. ]+")).toList();
        int row = 0;
        for (int code = 0; code < 0x1000000; code += 0x052B3D) {
            String[] words = rows.get(row++).strip().split(" +");
            Lab ours = Lab.of(Xyz.ofCode(code));
            Lab theirs =
                    new Lab(Double.parseDouble(words[0]), Double.parseDouble(words[1]), Double.parseDouble(words[2]));
            assertEquals(theirs.lightness(), ours.lightness(), 0.01);
            assertEquals(theirs.a(), ours.a(), 0.01);
            assertEquals(theirs.b(), ours.b(), 0.01);
        }
        assertTrue(row > 40 && row == rows.size());
    }
}
