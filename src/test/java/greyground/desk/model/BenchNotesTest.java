package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.bite.LoggedProof;
import greyground.app.recipe.SourceArt;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.film.job.Told;
import greyground.json.KeptField;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BenchNotesTest {
    @TempDir
    Path folder;

    private final BenchState fresh = BenchState.fresh(
            Path.of("leaf.png"), new SourceArt("leaf.png", "leaf", "", 400, 300), Workshop.assumed(), "2026-03-04");

    private static BenchNotes some() {
        return BenchNotes.NONE
                .withPlate("second state\nwarm bath")
                .withStep("Bite", "pulled early")
                .withProof(ProofWords.read("20", ProofWords.Kind.DEPTH, "31,5"))
                .withProof(ProofWords.read("12", ProofWords.Kind.LIGHTNESS, "10 84.2, 40 57.5\n80 25"));
    }

    @Test
    void notesAreKeptInTheJobsFileAndReadBack() {
        Job noted = some().in(fresh.job());
        Job read = JobFile.read(JobFile.text(noted));
        assertEquals(some(), BenchNotes.of(read));
        assertEquals(fresh.job(), BenchNotes.without(read));
        assertEquals(
                List.of(12.0, 20.0),
                some().proofs().stream().map(LoggedProof::minutes).toList());
        assertEquals(fresh.job(), BenchNotes.NONE.in(noted), "nothing written down leaves nothing in the file");
    }

    @Test
    void otherFieldsOfTheFileStayAsTheyAre() {
        Job other = fresh.job().keeping(List.of(new KeptField(List.of(), "drawer", "\"3\"")));
        Job noted = some().in(other);
        assertTrue(noted.kept().contains(new KeptField(List.of(), "drawer", "\"3\"")));
        Job more = other.keeping(List.of(
                new KeptField(List.of(), BenchNotes.FIELD, "{\"version\":1,\"plate\":\"x\",\"wax\":\"beeswax\"}")));
        assertTrue(JobFile.text(some().in(more)).contains("beeswax"));
    }

    @Test
    void notesThatCantBeReadAreLeftAlone() {
        for (String json : new String[] {"{\"version\":2}", "[1]", "{\"version\":1,\"biteLog\":[{\"minutes\":-4}]}"}) {
            List<KeptField> kept = new ArrayList<>();
            kept.add(new KeptField(List.of(), BenchNotes.FIELD, json));
            Job job = fresh.job().keeping(kept);
            assertEquals(BenchNotes.NONE, BenchNotes.of(job));
            Refusal refused = assertThrows(Refusal.class, () -> some().in(job));
            assertTrue(String.valueOf(refused.getMessage()).contains("newer"), refused.getMessage());
        }
    }

    @Test
    void aNoteIsAChangeThatIsUndoneAndMakesTheSameFilm() {
        BenchModel model = new BenchModel(new Recovery(new DeskFolder(folder), 1));
        model.lay(fresh, null);
        model.note("note", "write", notes -> notes.withPlate("w"));
        model.note("note", "write", notes -> notes.withPlate("warm"));
        assertTrue(model.jobUnsaved());
        assertTrue(model.state().orElseThrow().makesTheSameAs(fresh));
        assertEquals("warm", model.notes().plate());
        model.undo();
        assertEquals(BenchNotes.NONE, model.notes(), "letters typed in one go are one step");
        model.redo();
        model.tell("grain", Told.as("grain", "150um"));
        assertEquals("warm", model.notes().plate(), "settings leave the notes alone");
    }

    @Test
    void proofsAreReadAsTheyAreTypedAndRefusedInOneLine() {
        LoggedProof tones = ProofWords.read("12,5", ProofWords.Kind.DENSITY, "10% 0.17\n40: 0.55\n80;1.35");
        assertEquals(12.5, tones.minutes());
        // CIE 15: L* = 116 cbrt(Y) - 16 for Y = 10^-0.55 = 0.2818.
        assertEquals(
                116 * Math.cbrt(Math.pow(10, -0.55)) - 16, tones.tones().get(1).lightness(), 1e-9);
        assertEquals(
                OptionalDouble.of(18.5),
                ProofWords.read("12", ProofWords.Kind.DEPTH, "18.5").depthMicrometres());
        for (String[] wrong : new String[][] {
            {"", "10 84, 40 57"},
            {"12", "10 84"},
            {"12", "ten 84, 40 57"},
            {"12", "10 184, 40 57"},
            {"0", "10 84, 40 57"}
        }) {
            Refusal refused =
                    assertThrows(Refusal.class, () -> ProofWords.read(wrong[0], ProofWords.Kind.LIGHTNESS, wrong[1]));
            assertTrue(!String.valueOf(refused.getMessage()).contains("\n"), refused.getMessage());
        }
        LoggedProof proof = ProofWords.read("12", ProofWords.Kind.DEPTH, "18");
        assertThrows(Refusal.class, () -> BenchNotes.NONE.withProof(proof).withProof(proof), "the same minute twice");
    }
}
