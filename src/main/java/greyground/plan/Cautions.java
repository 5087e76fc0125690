package greyground.plan;

import java.util.List;

/**
 * What can hurt at each step, in a sentence or two. They remind someone who has been taught; they replace neither the material's
 * safety data sheet nor local law nor licensed practice, and the lead line says so. Sources: ICNIRP 2004 (ultraviolet limits, as
 * quoted), Etching Zinc Plates Safely (zinc in ferric chloride), University of Utah EHS, Acid Etching (rosin dust); the rest is
 * common practice.
 */
final class Cautions {
    static final String LEAD =
            "General cautions only. The safety data sheet of the material in your hand, local law, your"
                    + " studio's rules and qualified people come first.";

    static final List<String> DEGREASE = List.of(
            "Copper edges cut: file them before handling. Vinegar and salt sting the eyes; never mix them with bleach or"
                    + " peroxide, and rinse well, for what is left goes on biting.");

    static final List<String> SODA =
            List.of("Soda dries the skin: wear gloves, and weigh the powder without raising dust.");

    static final List<String> LAMP = List.of(
            "Never look at or reach under a lit lamp. Close the frame, cover skin, wear eyewear that stops ultraviolet; some"
                    + " lamps make ozone, all get hot.");

    static final List<String> LAMP_AGAIN =
            List.of("The lamp again: frame closed, skin covered, eyes behind eyewear that stops ultraviolet.");

    static final List<String> SPRAY = List.of(
            "Sprayed ground is a flammable mist: booth or open air, no flame or spark, a respirator made for it. Rosin or asphalt"
                    + " dust can explode in a closed box and can sensitise the lungs.");

    static final List<String> STOP_OUT = List.of(
            "Varnish and solvents: air the room, keep flames away, put rags in a closed metal bin (they can heat by"
                    + " themselves).");

    static final List<String> WARM_DRYING =
            List.of("Let solvent air off before any warm drying: no solvent-wet plate in a heated cabinet.");

    static final List<String> FERRIC = List.of(
            "Ferric chloride is acidic and corrosive: gloves, goggles, apron, eyewash within reach, fresh air above all if warm."
                    + " Own labelled tray, no metal tools.",
            "Copper and brass only in this bath: zinc gives off hydrogen and acid vapour, aluminium reacts violently. Never let it"
                    + " meet alkali, bleach or another acid. To dilute, add the solution to water, slowly.");

    static final List<String> STRIPPER = List.of(
            "Caustic stripper burns skin and eyes severely: goggles and long gloves; caustic into cold water, never the reverse;"
                    + " keep it from aluminium and from the ferric bath.",
            "Spent bath, first rinses and sludge carry copper, which poisons water life: collect, label, hand to a licensed"
                    + " carrier. Neutralised is not free of copper.");

    static final List<String> PRESS = List.of(
            "Keep fingers, hair and sleeves from the press. Oily rags go into a closed metal bin: they can catch fire by"
                    + " themselves.");

    private Cautions() {}
}
