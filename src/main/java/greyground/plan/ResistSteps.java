package greyground.plan;

import static greyground.plan.StepDraft.fixed;
import static greyground.plan.StepDraft.minutes;
import static greyground.plan.StepDraft.perLitre;
import static greyground.plan.StepDraft.seconds;

import greyground.film.job.ReadingSide;
import greyground.plan.ExposurePlan.Step;
import greyground.plate.LightSplit;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.Developer;
import greyground.workshop.ExposureFigures;
import greyground.workshop.Figure;
import greyground.workshop.FilmPrinter;
import greyground.workshop.LampFigures;
import greyground.workshop.ResistFigures;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** The steps from bare copper to developed resist. */
record ResistSteps(Workshop workshop, PlanRequest request, ExposureTimes times) {
    private static final String COVERED = "Lay the cover sheet back on the dry resist, without bubbles.";

    private static final String CONTACT =
            "Good contact all over, wedge beside the image. Note the step held afterwards.";

    Step laminate() {
        ResistFigures resist = workshop.resist();
        StepDraft step = new StepDraft("Degrease and laminate")
                .known("resist thickness", resist.thicknessMicrometres(), StepDraft::micrometres)
                .advise(
                        "Clean until water runs off in one sheet with no break, dry, and laminate at once under safelight.");
        step.advise(
                request.isBitten()
                        ? "Weigh the plate first, clean and dry."
                        : "Don't thin it: here the resist's own thickness holds the ink.");
        return step.care(Cautions.EDGES).done();
    }

    Step thinning() {
        ResistFigures resist = workshop.resist();
        double wanted = resist.thinningMinutes().value();
        double least = resist.thinningLeastMinutes().value();
        double most = resist.thinningMostMinutes().value();
        StepDraft step = new StepDraft("Thinning in soda")
                .clock(wanted * 60)
                .known("time", resist.thinningMinutes(), StepDraft::minutes)
                .onCard(
                        "Thin",
                        "soda " + perLitre(resist.thinningGramsPerLitre().value()) + ", "
                                + StepDraft.celsius(resist.thinningCelsius().value()),
                        "min",
                        "°C")
                .known("soda, " + soda(), resist.thinningGramsPerLitre(), StepDraft::perLitre)
                .known("temperature", resist.thinningCelsius(), StepDraft::celsius)
                .known("window", Refusal.plain(least) + " to " + minutes(most), resist.thinningMostMinutes())
                .known("thickness afterwards", resist.thinnedThicknessMicrometres(), StepDraft::micrometres);
        if (wanted < least || wanted > most) {
            step.warn("Thinning of " + minutes(wanted) + " lies outside the window of " + Refusal.plain(least) + " to "
                    + minutes(most)
                    + ": too short leaves a thick, soft-edged resist, too long pinholes and weak lands.");
        }
        if (resist.thinningMinutes().isAssumed()) {
            step.advise(
                    "Find your own time once: on one plate take strips out at 0, 10, 20, 30 and 40 min, expose the same wedge"
                            + " and dots on each, and keep the time that holds the smallest dot and the smallest land.");
        }
        return step.advise(
                        "Peel the cover sheet off first and keep it, clean and flat: it goes back on before the exposure.")
                .advise("Rock gently, rinse, dry cool and flat. Safelight throughout.")
                .care(Cautions.SODA)
                .done();
    }

    Step filmCheck() {
        ExposureFigures exposure = workshop.exposure();
        FilmPrinter printer = workshop.filmPrinter();
        ResistFigures resist = workshop.resist();
        FilmBlack black = FilmBlack.of(workshop, request.process());
        double needed = black.needed();
        double onFilm = black.onFilm();
        StepDraft step = new StepDraft("Film on the light table")
                .computed(
                        "black needed",
                        fixed(needed, 2) + " D (UV)",
                        split().map(shared -> "log10 of both doses").orElse("density of the wedge step held")
                                + " + film base now less then + 1/contrast + margin",
                        exposure.targetStep(),
                        printer.clearUvDensity(),
                        exposure.filmBaseAtTestDensity(),
                        resist.contrastGamma(),
                        exposure.blackMarginDensity())
                .computed(
                        "black on this film",
                        fixed(onFilm, 2) + " D (UV)",
                        "the printer's black, base included, as the resist sees it",
                        printer.blackUvDensity());
        if (black.missing() > 0) {
            double steps = black.missingSteps();
            step.warn("The film's black is " + fixed(black.missing(), 2)
                    + " D too thin for this exposure: shadows may harden"
                    + " and stay shut. Print a denser black (two films in register add up), or hold "
                    + fixed(steps, 1) + " steps fewer, which is "
                    + fixed(100 * StepWedge.exposureFactor(steps, 0), 0) + " % of the exposure.");
        }
        return step.known("smallest opening", resist.smallestOpeningMicrometres(), StepDraft::micrometres)
                .known("smallest land", resist.smallestLandMicrometres(), StepDraft::micrometres)
                .advise(
                        "Measure the 100 mm rulers both ways: out by more than 0.2 mm, print again at 100 %. Look through solid"
                                + " blacks with a loupe: 1 % of pinholes brings a black of 3.0 down to 2.0.")
                .advise("Black to the eye need not be black to the lamp: judge by a wedge, not by looking.")
                .done();
    }

    List<Step> exposures() {
        ExposureFigures exposure = workshop.exposure();
        if (!request.separateScreen()) {
            StepDraft one = new StepDraft("Exposure")
                    .clock(times.togetherSeconds())
                    .advise(request.isBitten() ? COVERED : "The cover sheet stays on the resist, under the film.")
                    .known("your tested screen time", exposure.screenSeconds(), StepDraft::seconds)
                    .known("your tested image time", exposure.imageSeconds(), StepDraft::seconds);
            corrections(one);
            return List.of(one.computed(
                            "expose the positive for",
                            seconds(times.togetherSeconds()),
                            "no separate screen: the image gets the sum of both (common practice)",
                            correctedBy(exposure.screenSeconds(), exposure.imageSeconds()))
                    .onCard("Expose", stepToHold(), "s", "step held")
                    .advise(lies("Positive"))
                    .advise(CONTACT)
                    .care(Cautions.LAMP)
                    .done());
        }
        StepDraft screen = new StepDraft("Screen exposure")
                .clock(times.screenSeconds())
                .advise(COVERED)
                .known("your tested screen time", exposure.screenSeconds(), StepDraft::seconds);
        corrections(screen);
        screen.computed(
                        "expose the screen for",
                        seconds(times.screenSeconds()),
                        basis(LightSplit::screenDose),
                        split().isPresent()
                                ? correctedBy(exposure.screenSeconds(), exposure.imageSeconds())
                                : correctedBy(exposure.screenSeconds()))
                .onCard("Screen", "the screen film alone", "s")
                .advise(lies("Screen film"))
                .advise(CONTACT)
                .care(Cautions.LAMP);
        split().ifPresent(shared -> soften(screen, shared));
        StepDraft image = new StepDraft("Image exposure")
                .clock(times.imageSeconds())
                .known("your tested image time", exposure.imageSeconds(), StepDraft::seconds)
                .computed(
                        "expose the positive for",
                        seconds(times.imageSeconds()),
                        basis(LightSplit::imageDose),
                        split().isPresent()
                                ? correctedBy(exposure.screenSeconds(), exposure.imageSeconds())
                                : correctedBy(exposure.imageSeconds()))
                .onCard("Image", stepToHold(), "s", "step held")
                .computed(
                        "both together",
                        seconds(times.togetherSeconds()),
                        "what one exposure without a screen would get",
                        correctedBy(exposure.screenSeconds(), exposure.imageSeconds()))
                .advise(lies("Positive"))
                .advise("Same frame, same lamp, straight after the screen. The order doesn't matter; the sum does.")
                .care(Cautions.LAMP_AGAIN);
        return List.of(screen.done(), image.done());
    }

    private Optional<LightSplit> split() {
        return request.process() instanceof PlateProcess.Photogravure gravure ? gravure.split() : Optional.empty();
    }

    private String basis(ToDoubleFunction<LightSplit> dose) {
        return split().map(shared -> fixed(dose.applyAsDouble(shared), 2)
                        + " hardening doses; both tested times x corrections hold the wanted step, which gives a dose")
                .orElse("tested time x corrections");
    }

    /** How the screen's edges are made as soft as the split wants them. */
    private void soften(StepDraft screen, LightSplit shared) {
        boolean inkDown = request.job().placing().readingSide().inkSide() == ReadingSide.InkSide.DOWN;
        PlateConditions conditions =
                BenchConditions.ofDepth(workshop, request.process(), workshop.usualDepthMicrometres(), inkDown);
        double spacer = SplitTimes.of(workshop, conditions, shared).spacerMicrometres();
        if (spacer > 0) {
            screen.computed(
                    "clear sheet under the screen",
                    fixed(spacer / 1000, 2) + " mm",
                    "gap whose half-shadow is " + Refusal.plain(Math.rint(shared.edgeBlurMicrometres()))
                            + " \u00b5m soft, at the lamp's half angle",
                    workshop.light().halfAngleDegrees());
        }
    }

    /** The given times and everything that corrects them: a corrected time is only as sure as all of these. */
    private Figure[] correctedBy(Figure... found) {
        ExposureFigures exposure = workshop.exposure();
        LampFigures light = workshop.light();
        List<Figure> all = new ArrayList<>(List.of(found));
        all.addAll(List.of(exposure.stepHeld(), exposure.targetStep(), exposure.filmBaseAtTestDensity()));
        all.addAll(List.of(light.distanceMillimetres(), light.distanceAtTestMillimetres(), light.hours()));
        all.addAll(List.of(light.hoursAtTest(), workshop.filmPrinter().clearUvDensity()));
        return all.toArray(Figure[]::new);
    }

    /** How a film lies. Its legend is never mirrored, so the words say by themselves which side looks up. */
    private String lies(String film) {
        return request.job().placing().readingSide().inkSide() == ReadingSide.InkSide.DOWN
                ? film + " with its ink side down on the resist: the words INK SIDE then read backwards from above."
                : film + " with its ink side up, its clear side on the resist: the words INK SIDE then read right from"
                        + " above.";
    }

    private void corrections(StepDraft step) {
        ExposureFigures exposure = workshop.exposure();
        LampFigures light = workshop.light();
        step.computed(
                "step held " + Refusal.plain(exposure.stepHeld().value()) + ", wanted "
                        + Refusal.plain(exposure.targetStep().value()),
                StepDraft.times(times.stepFactor()),
                "10^(0.15 x steps missing)",
                exposure.stepHeld(),
                exposure.targetStep());
        String distance = centimetres(light.distanceAtTestMillimetres().value()) + " cm tested, "
                + centimetres(light.distanceMillimetres().value()) + " cm now";
        boolean moved = light.distanceAtTestMillimetres().value()
                != light.distanceMillimetres().value();
        if (light.kind() == LampFigures.Kind.POINT) {
            step.computed(
                    "lamp " + distance,
                    StepDraft.times(times.distanceFactor()),
                    "inverse square of the distance",
                    light.distanceAtTestMillimetres(),
                    light.distanceMillimetres());
        } else if (moved) {
            step.warn("Tubes at " + distance
                    + ": their light follows no simple law, so nothing was corrected. Expose a"
                    + " wedge at the new distance.");
        }
        CornerLight.of(workshop, request.job().plate()).ifPresent(corner -> corners(step, corner));
        step.computed(
                "lamp's age",
                StepDraft.times(times.ageingFactor()),
                "exponential fading to 80 % in the lamp's rated hours",
                light.hours(),
                light.hoursAtTest());
        step.computed(
                "film base",
                StepDraft.times(times.baseFactor()),
                "10^(clear UV density now minus then)",
                workshop.filmPrinter().clearUvDensity(),
                exposure.filmBaseAtTestDensity());
    }

    private void corners(StepDraft step, CornerLight corner) {
        step.computed(
                "light at the plate's corners",
                fixed(corner.steps(), 1) + " steps less",
                fixed(corner.share() * 100, 0) + " % of the middle's: cos⁴ of the angle off the lamp's axis",
                workshop.light().distanceMillimetres());
        double most = CornerLight.most(request.process());
        if (corner.steps() > most) {
            step.warn("The plate's corners get " + fixed(100 - corner.share() * 100, 0)
                    + " % less light than its middle, " + fixed(corner.steps(), 1)
                    + " wedge steps. Hang the lamp at "
                    + fixed(Math.ceil(corner.lampMillimetresFor(most) / 10), 0) + " cm, where it is "
                    + Refusal.plain(most) + ", and find the times again; else corners print darker.");
        }
    }

    Step hold() {
        ExposureFigures exposure = workshop.exposure();
        double hold = exposure.holdMinutes().value();
        return new StepDraft("Hold")
                .clock(hold * 60)
                .known("time", exposure.holdMinutes(), StepDraft::minutes)
                .advise("Dark and flat, cover sheet on: the resist goes on hardening. Then peel the sheet off.")
                .done();
    }

    Step developing() {
        Developer developer = workshop.developer();
        double loss = developer
                .soda()
                .hardnessLoss(
                        developer.gramsPerLitre().value(),
                        developer.hardnessMilligramsPerLitre().value());
        double share = developer.breakpointShare().value();
        double whole = developer.minutes().value() * 60;
        StepDraft step = new StepDraft("Develop")
                .clock(whole)
                .known("soda, " + soda(), developer.gramsPerLitre(), StepDraft::perLitre);
        for (Developer.Soda other : Developer.Soda.values()) {
            if (other != developer.soda()) {
                double grams = developer
                        .soda()
                        .equivalentGrams(developer.gramsPerLitre().value(), other);
                step.computed(
                        "or " + other.name().toLowerCase(Locale.ROOT),
                        perLitre(grams),
                        "same carbonate, by molar mass",
                        developer.gramsPerLitre());
            }
        }
        step.computed(
                "soda lost to hard water",
                fixed(loss * 100, 1) + " %",
                "one for one with calcium and magnesium",
                developer.hardnessMilligramsPerLitre(),
                developer.gramsPerLitre());
        if (loss > 0.10) {
            step.warn("Hard water takes " + fixed(loss * 100, 0)
                    + " % of the soda (more than 10 %): use soft or distilled water" + " or weigh that much more.");
        }
        if (request.isBitten()) {
            step.advise("Tape the back first and press the tape's edges down: it stays on through the bath.");
        }
        return step.known("temperature", developer.temperatureCelsius(), StepDraft::celsius)
                .known("time, about", developer.minutes(), StepDraft::minutes)
                .onCard(
                        "Develop",
                        "soda " + perLitre(developer.gramsPerLitre().value()) + ", "
                                + StepDraft.celsius(
                                        developer.temperatureCelsius().value()) + "; copper shows at "
                                + clock(whole * share),
                        "copper at",
                        "min",
                        "°C")
                .computed(
                        "copper should show at",
                        seconds(whole * share),
                        "share of the whole time at which copper first shows",
                        developer.minutes(),
                        developer.breakpointShare())
                .advise("Copper check: note when copper first shows, divide by " + Refusal.plain(share)
                        + ", and stop then. Shows at 2 min: " + clock(120 / share) + " in all; 3 min: "
                        + clock(180 / share)
                        + "; 4 min: " + clock(240 / share) + ".")
                .advise("Rinse, then look with a loupe: clean bright copper in every dark, every small land in place.")
                .care(Cautions.SODA)
                .done();
    }

    private String soda() {
        return workshop.developer().soda().name().toLowerCase(Locale.ROOT);
    }

    private static String clock(double seconds) {
        long whole = Math.round(seconds);
        return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    private String stepToHold() {
        double step = split().map(shared -> Math.rint(10 * StepWedge.step(StrictMath.log10(shared.together()))) / 10)
                .orElse(workshop.exposure().targetStep().value());
        return "hold step " + Refusal.plain(step) + " of the wedge";
    }

    private static String centimetres(double millimetres) {
        return Refusal.plain(millimetres / 10);
    }
}
