package greyground.plan;

import java.util.List;

/**
 * What can hurt at each step, in a sentence or two. They remind someone who has been taught; they replace neither the material's
 * safety data sheet nor local law nor licensed practice, and the lead line says so. Sources: ICNIRP 2004 (ultraviolet limits, as
 * quoted), Etching Zinc Plates Safely (zinc in ferric chloride), University of Utah EHS, Acid Etching (rosin dust); the rest is
 * common practice.
 */
public final class Cautions {
    static final String LEAD =
            "General cautions only. The safety data sheet of the material in your hand, local law, your"
                    + " studio's rules and qualified people come first.";

    static final List<String> EDGES = List.of("Copper edges cut: gloves, and file them before anything else.");

    static final List<String> SODA = List.of(
            "Soda stings the eyes and dries the skin: goggles and gloves; weigh the powder"
                    + " without raising dust. A bath that holds dissolved resist is collected, not poured away without leave.");

    static final List<String> BRIGHTEN =
            List.of("Vinegar and salt sting the eyes: goggles, gloves, fresh air. Never with bleach"
                    + " or peroxide; rinse well, for what is left goes on biting.");

    static final List<String> LAMP = List.of(
            "Never look at or reach under a lit lamp. Close the frame, cover skin, wear eyewear that stops ultraviolet; some"
                    + " lamps make ozone, all get hot.");

    static final List<String> LAMP_AGAIN =
            List.of("The lamp again: frame closed, skin covered, eyes behind eyewear that stops ultraviolet.");

    /** Where a card is moved between the parts of an exposure. */
    public static final List<String> STRIPS =
            List.of("Put the lamp out, or shutter it, before the frame is opened and the card moved.");

    static final List<String> SPRAY =
            List.of("Sprayed ground is a flammable mist: booth or open air, no flame or spark, a"
                    + " respirator of the kind made for sprays. Rosin or asphalt dust can explode in a closed box and can sensitise the"
                    + " lungs.");

    static final List<String> STOP_OUT = List.of(
            "Varnish and solvents: air the room, keep flames away, put rags in a closed metal bin (they can heat by"
                    + " themselves).");

    static final List<String> WARM_DRYING =
            List.of("Let solvent air off first: no solvent-wet plate in warm air or under the lamp.");

    static final List<String> FERRIC = List.of(
            "Ferric chloride is acidic and corrosive: gloves, goggles, apron, eyewash within reach, fresh air always."
                    + " Own labelled tray, no metal tools. Above about 30 °C (assumed) it fumes: extraction and a lid, never a"
                    + " flame or a hotplate.",
            "Copper and brass only in this bath: zinc gives off hydrogen and acid vapour, aluminium reacts violently. Never let it"
                    + " meet alkali, bleach or another acid. To dilute, add the solution to water, slowly.");

    static final List<String> WASTE = List.of(
            "Old baths, first rinses and sludge carry copper, which poisons water life:"
                    + " collect, label, hand to a licensed carrier, as local law asks. Neutralised is not free of copper.");

    static final List<String> STRIPPER =
            List.of("Solvents: fresh air, no flame, rags in a closed metal bin. Caustic stripper burns"
                    + " skin and eyes severely: goggles and long gloves; caustic into cold water, never the reverse; keep it from"
                    + " aluminium and from the ferric bath.");

    static final List<String> PRESS = List.of(
            "Keep fingers, hair and sleeves from the press. Oily rags go into a closed metal bin: they can catch fire by"
                    + " themselves.");

    private Cautions() {}
}
