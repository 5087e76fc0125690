package greyground.plan;

import static greyground.plan.StepDraft.fixed;
import static greyground.plan.StepDraft.micrometres;
import static greyground.plan.StepDraft.minutes;

import greyground.plan.ExposurePlan.Step;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.Aquatint;
import greyground.workshop.BathFigures;
import greyground.workshop.Figure;
import greyground.workshop.Hardening;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;

/** The steps from developed resist to proof. */
record CopperSteps(Workshop workshop, PlanRequest request) {
    /** What to look at in a second bite. */
    static final String AGAIN =
            "Bite again only with the resist still whole, or a new ground. Each further micrometre also undercuts: watch the"
                    + " narrowest lands and the wide blacks";

    /** What the bath takes of the plate, as {@link BenchOrder#loss} reads it again. */
    static final String BARE = "bare, of the plate";

    static final String TAKEN = "taken, of plate x depth";
    static final String SHARE_UNIT = " %";

    /** More plates than these before the bath is slow need no number (assumed). */
    private static final int MANY_PLATES = 100;

    /** The shop's usual minutes, for the same depth in the bath as it stands when the plate goes in. */
    static double biteMinutes(Workshop workshop, Bite bite) {
        BathFigures bath = workshop.bath();
        return bath.biteMinutes().value() * bath.rateMicrometresPerMinute().value() / bite.rateAtStart();
    }

    Step brighten() {
        return new StepDraft("Brighten the copper")
                .advise(
                        "Some seconds of weak vinegar with a little salt, until the open copper is pink all over; rinse and dry"
                                + " at once, for dull copper bites unevenly (common practice, no source).")
                .care(Cautions.BRIGHTEN)
                .done();
    }

    Step aquatint(PlateProcess.SprayedAquatint ground) {
        Aquatint aquatint = workshop.aquatint();
        return new StepDraft("Aquatint, sprayed on the open copper")
                .clock(aquatint.dryingMinutes().value() * 60)
                .stated("land wanted", fixed(ground.landFraction() * 100, 0) + " % of the open copper")
                .stated("grain wanted", micrometres(ground.grainMicrometres()))
                .known("drying", aquatint.dryingMinutes(), StepDraft::minutes)
                .advise(
                        "Spray a strip of bare copper beside the plate and look with a loupe before each further coat: about as"
                                + " much dot as gap, dots apart, none flooded.")
                .care(Cautions.SPRAY)
                .done();
    }

    Step stopOut() {
        return new StepDraft("Stop out edges and pinholes")
                .advise(
                        "Cover the bevel and every pinhole outside the image, look once more at the tape behind; let it dry. What isn't"
                                + " covered bites.")
                .care(Cautions.STOP_OUT)
                .done();
    }

    Step hardening() {
        Hardening hardening = workshop.hardening();
        return new StepDraft("Harden")
                .clock(hardening.minutes().value() * 60)
                .known("time under the lamp", hardening.minutes(), StepDraft::minutes)
                .onCard("Harden", "the same lamp, without any film", "min")
                .advise("Dry first, then expose the whole plate without any film.")
                .care(Cautions.LAMP_AGAIN)
                .care(request.isBitten() ? Cautions.WARM_DRYING : List.of())
                .done();
    }

    Step bite() {
        BathFigures bath = workshop.bath();
        Bite bite = Bite.of(workshop, request);
        double time = biteMinutes(workshop, bite);
        double depth = bite.depthAfter(time);
        double grams =
                (bite.copperAfter(depth) - bite.copperAtStart()) * bath.litres().value();
        FerricStrength strength = FerricStrength.ofBaume(bath.degreesBaume().value());
        StepDraft step = new StepDraft("Bite")
                .clock(StepDraft.clockSeconds(time))
                .known("bath strength", bath.degreesBaume(), degrees -> Refusal.plain(degrees) + " °Bé")
                .computed(
                        "hydrometer shows",
                        "SG " + fixed(strength.kilogramsPerLitre(), 3),
                        "145/(145 - degrees), at 60 °F (16 °C), clean bath",
                        bath.degreesBaume())
                .computed(
                        "ferric chloride",
                        fixed(strength.massPerCent(), 1) + " %, " + fixed(strength.gramsPerLitre(), 0) + " g/L",
                        "density table at 20 °C",
                        bath.degreesBaume());
        bathNow(step, bite)
                .known(
                        "usual bite",
                        minutes(bath.biteMinutes().value()),
                        bath.biteMinutes(),
                        "in a fresh bath of "
                                + Refusal.plain(bath.rateDegreesBaume().value()) + " °Bé at "
                                + StepDraft.celsius(
                                        bath.rateTemperatureCelsius().value()))
                .computed(
                        "bite for", minutes(time), "usual bite x tested rate / rate now", rateFrom(bath.biteMinutes()))
                .onCard(
                        "Bite",
                        Refusal.plain(bath.degreesBaume().value()) + " °Bé, "
                                + StepDraft.celsius(bath.temperatureCelsius().value()) + ", for a depth of "
                                + micrometres(Math.rint(depth)),
                        "min",
                        "°C",
                        "°Bé",
                        "g lost")
                .computed(
                        "depth expected",
                        micrometres(Math.rint(depth)),
                        "rate x time, slowing as copper dissolves",
                        rateFrom(bath.biteMinutes(), bath.litres()))
                .computed(
                        "undercut of each edge",
                        micrometres(Math.rint(bite.undercut(depth))),
                        "depth / etch factor (Allen, Horne & Stevens 1982)",
                        rateFrom(bath.biteMinutes(), bath.etchFactor()))
                .computed(
                        "narrowest land that lasts",
                        micrometres(Math.rint(BitePlan.leastLand(bite, depth))),
                        "two undercuts + 5 µm to hold on (from memory)",
                        rateFrom(bath.biteMinutes(), bath.etchFactor()))
                .computed(
                        BARE,
                        fixed(request.loss().bareShare() * 100, 2) + SHARE_UNIT,
                        "the film's tones on the virtual plate, developed",
                        workshop.exposure().targetStep(),
                        workshop.filmPrinter().spotGrowthMicrometres())
                .computed(
                        TAKEN,
                        fixed(request.loss().takenAt(workshop.usualDepthMicrometres()) * 100, 2) + SHARE_UNIT,
                        "the same bitten: mean depth / depth, undercut included",
                        workshop.exposure().targetStep(),
                        workshop.filmPrinter().spotGrowthMicrometres(),
                        bath.etchFactor())
                .computed(
                        "copper dissolved",
                        fixed(grams, 1) + " g",
                        "plate x depth x share taken x 8.96 g/cm³",
                        rateFrom(bath.biteMinutes(), bath.etchFactor()))
                .computed(
                        "copper in bath, after",
                        StepDraft.perLitre(bite.copperAfter(depth)),
                        "before + dissolved / litres",
                        rateFrom(bath.biteMinutes(), bath.etchFactor(), bath.litres()));
        nextPlates(step, bite, time, depth);
        warnings(step, bite, depth);
        if (request.process() instanceof PlateProcess.Photogravure) {
            step.advise(
                    "One bath is usual for this resist. That weaker baths pass through sooner holds for gelatine; for this"
                            + " resist nobody has shown it.");
        }
        return step.advise(
                        "Plate face up, moved the same way each time. Read the thermometer in the bath, not in the room."
                                + " Write down minutes, degrees and copper in the bite log.")
                .care(Cautions.FERRIC)
                .done();
    }

    /** What this plate does to the bath for those after it. */
    private void nextPlates(StepDraft step, Bite bite, double time, double depth) {
        BathFigures bath = workshop.bath();
        Figure[] from = rateFrom(bath.biteMinutes(), bath.etchFactor(), bath.litres());
        double gained = bite.copperAfter(depth) - bite.copperAtStart();
        double roomAfter = bite.copperLimit() - bite.copperAfter(depth);
        double plates = Math.floor((bite.copperLimit() / 2 - bite.copperAtStart()) / gained);
        String next = roomAfter > 0
                ? minutes(time * (bite.copperLimit() - bite.copperAtStart()) / roomAfter)
                : "no bite left";
        step.computed("bite of the next alike", next, "the rate falls evenly with copper", from)
                .computed(
                        "till times double",
                        plates < MANY_PLATES ? fixed(Math.max(0, plates), 0) + " plates" : "over " + MANY_PLATES,
                        "plates alike till half of " + Refusal.plain(bite.copperLimit()) + " g/L, this one counted",
                        from);
    }

    /** The bath as a plate goes in. */
    StepDraft bathNow(StepDraft step, Bite bite) {
        BathFigures bath = workshop.bath();
        return step.known("temperature", bath.temperatureCelsius(), StepDraft::celsius)
                .known("copper in bath, before", bath.copperGramsPerLitre(), StepDraft::perLitre)
                .computed(
                        "starting rate",
                        fixed(bite.rateAtStart(), 2) + " µm/min",
                        "tested rate x temperature x copper load",
                        rateFrom());
    }

    /** Everything that the rate of this bath rests on, and whatever is given besides. */
    Figure[] rateFrom(Figure... besides) {
        BathFigures bath = workshop.bath();
        List<Figure> all = new ArrayList<>(List.of(besides));
        all.addAll(List.of(bath.rateMicrometresPerMinute(), bath.rateTemperatureCelsius()));
        all.addAll(List.of(bath.temperatureCelsius(), bath.activationKilojoulesPerMole()));
        all.addAll(List.of(bath.copperGramsPerLitre(), bath.copperLimitGramsPerLitre()));
        return all.toArray(Figure[]::new);
    }

    void warnings(StepDraft step, Bite bite, double depth) {
        BathFigures bath = workshop.bath();
        double apart = bath.degreesBaume().value() - bath.rateDegreesBaume().value();
        if (Math.abs(apart) > 0.5) {
            step.warn("The rate was tested at "
                    + Refusal.plain(bath.rateDegreesBaume().value()) + " °Bé and this bath has "
                    + Refusal.plain(bath.degreesBaume().value())
                    + ": strength isn't corrected for. At studio strengths a stronger bath should bite slower; bite a test"
                    + " strip first.");
        }
        if (bite.copperAfter(depth) >= bite.copperLimit() / 2) {
            step.warn("This bite leaves " + fixed(bite.copperAfter(depth), 0)
                    + " g/L copper in the bath, past half of the " + fixed(bite.copperLimit(), 0)
                    + " g/L where it is taken to stop: times double. Make a fresh bath.");
        }
        if (bite.copperAtStart() > 0) {
            step.advise("Copper in solution raises the hydrometer: a used bath reads stronger than it is.");
        }
    }

    /** Rinsed, and proofed while the plate can still go back into the bath. */
    Step firstProof() {
        return new StepDraft("Rinse and proof, resist still on")
                .advise("Rinse long, face down first. Measure the depth at a wide bar's edge and write it on the card.")
                .advise(
                        "Ink, wipe by hand and pull one proof before the resist comes off: while it holds, the plate can go back"
                                + " (common practice, no source). Standing resist wipes cleaner than bare copper: judge the darks by it,"
                                + " not the plate tone.")
                .care(Cautions.WASTE)
                .care(Cautions.PRESS)
                .done();
    }

    Step biteAgain() {
        double time = biteMinutes(workshop, Bite.of(workshop, request));
        String basis = "time so far x (depth wanted / depth now - 1)";
        Figure[] from = rateFrom(workshop.bath().biteMinutes());
        return new StepDraft("Bite again, or not")
                .computed("for a tenth deeper", minutes(time * 0.1) + " more", basis, from)
                .computed("for a quarter deeper", minutes(time * 0.25) + " more", basis, from)
                .advise(AGAIN + ".")
                .advise(
                        "Too dark: no bath gives copper back. Strip, burnish what is too dark, and give the next plate less"
                                + " time.")
                .advise(
                        "Blacks pale in their middle, grey edges round them: open bite, the lands are gone. Strip, lay an"
                                + " aquatint on the open copper and bite that; less time for the next plate, or a wider reserve of black (--reserve).")
                .done();
    }

    Step strip() {
        return new StepDraft("Strip the resist")
                .advise(
                        "Take off tape, stop-out and resist; rinse, dry, and look along the light for what still clings.")
                .advise("Weigh it dry: what it lost is in the bath (plan --weighed compares).")
                .care(Cautions.STRIPPER)
                .done();
    }

    Step edition() {
        StepDraft step = new StepDraft("Print");
        if (!request.isBitten()) {
            step.advise(
                    "The resist itself holds the ink: soft canvas, light hand, no scraper, low pressure to begin with.");
        }
        int transfers = request.job().placing().readingSide().transfers();
        if (transfers > 1) {
            String first = transfers % 2 == 0 ? "backwards" : "right";
            step.advise("The film is made for " + transfers
                    + " contact transfers: the first sheet, pulled from the plate, reads " + first
                    + ", the last one reads right.");
        }
        return step.advise(
                        "Paper heavy and evenly damp, blotted until no water shines; blankets clean and dry. Bevel and back wiped"
                                + " clean before every print.")
                .advise(
                        "Write paper, ink, pressure and wiping on the card: the edition is printed by them. Lay each dry print"
                                + " beside the first; where the darks grow paler, the plate is worn.")
                .advise(
                        "Measure paper, solid and wedge on the dry proof and keep them with the plan: a measured number replaces"
                                + " an assumed one.")
                .care(request.isBitten() ? List.of() : Cautions.PRESS)
                .done();
    }
}
