package greyground.app.recipe;

import greyground.app.files.FileFault;
import greyground.app.files.NamedFiles;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Films of several pictures in one folder, each by the same job and workshop and under its picture's name. One that fails does not stop the
 * others, and none takes the place of a file that is there, unless that is asked for.
 *
 * @param members in the order they were named
 * @param replace whether a film that is there already gives way
 */
public record FilmSeries(List<Member> members, boolean replace) {
    /** A picture, and the film it becomes. */
    public record Member(Path art, Path film) {}

    /**
     * What came of one.
     *
     * @param findings of its film; empty where there is none
     * @param fault why there is none, in a line; empty where there is
     */
    public record Made(Member member, Optional<Findings> findings, Optional<String> fault) {}

    public FilmSeries {
        members = List.copyOf(members);
    }

    /**
     * Names the films, and makes the folder where there is none.
     *
     * @param named what else is read, which no film may take the place of
     */
    public static FilmSeries of(List<Path> arts, Path folder, boolean replace, NamedFiles named) {
        List<Member> members = new ArrayList<>();
        Map<String, Path> taken = new HashMap<>();
        for (Path art : arts) {
            String name = String.valueOf(art.getFileName());
            int dot = name.lastIndexOf('.');
            Path film = folder.resolve((dot > 0 ? name.substring(0, dot) : name) + ".pdf");
            // Letters' case and accents tell no two files apart on many systems.
            String same = Normalizer.normalize(String.valueOf(film.getFileName()), Normalizer.Form.NFC)
                    .toUpperCase(Locale.ROOT)
                    .toLowerCase(Locale.ROOT);
            Path other = taken.putIfAbsent(same, art);
            if (other != null) {
                throw Refusal.use(other + " and " + art + " would both become " + film
                        + ": rename one, or give them one after the other to two folders");
            }
            members.add(new Member(art, film));
        }
        makeFolder(folder);
        arts.forEach(art -> named.reads("art", art));
        members.forEach(member -> named.writes("film of " + member.art(), member.film(), NamedFiles.Content.FILM));
        return new FilmSeries(members, replace);
    }

    private static void makeFolder(Path folder) {
        try {
            if (!Files.isDirectory(folder)) {
                Files.createDirectory(folder);
            }
        } catch (IOException refused) {
            throw Refusal.failure("cannot make the folder " + folder + ": " + FileFault.words(refused)
                    + "; make it yourself, or choose another");
        }
    }

    /**
     * Makes one film after another.
     *
     * @param job of each picture
     * @param done hears of each as soon as it is made or given up
     * @param progress of all; once it wants the work stopped, the films that are made stay and no further one is begun
     * @return what came of each; where the work was stopped, of fewer than there are members
     */
    public List<Made> make(Function<ArtSource, Job> job, Workshop workshop, Consumer<Made> done, Progress progress) {
        List<Made> all = new ArrayList<>();
        for (int i = 0; i < members.size(); i++) {
            Progress part = progress.part((double) i / members.size(), (i + 1.0) / members.size());
            try {
                Made made = made(members.get(i), job, workshop, part);
                all.add(made);
                done.accept(made);
            } catch (CancellationException stopped) {
                return all;
            }
        }
        return all;
    }

    private Made made(Member member, Function<ArtSource, Job> job, Workshop workshop, Progress progress) {
        try {
            if (!replace && Files.exists(member.film())) {
                throw Refusal.failure("the film " + member.film()
                        + " is there already: move it away, choose another folder, or add --replace");
            }
            ArtSource art = ArtSource.open(member.art());
            PositiveOutcome outcome = PositiveWork.prepare(
                    art, job.apply(art), workshop, Optional.of(member.film()), Optional.empty(), progress);
            return new Made(member, Optional.of(outcome.findings()), Optional.empty());
        } catch (CancellationException stopped) {
            throw stopped;
        } catch (Refusal refused) {
            return new Made(member, Optional.empty(), Optional.of(String.valueOf(refused.getMessage())));
        } catch (IOException lost) {
            return new Made(member, Optional.empty(), Optional.of(FileFault.words(lost)));
        } catch (RuntimeException unforeseen) {
            return new Made(
                    member,
                    Optional.empty(),
                    Optional.of(
                            "an unforeseen fault; no film of it is half written: give it alone, and report what that says"));
        }
    }
}
