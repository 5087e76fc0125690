package greyground.art.kind;

import greyground.art.packing.Stretch;
import greyground.art.page.ArtBytes;
import greyground.art.page.Unreadable;
import java.io.IOException;

/** Reads the portable anymap kinds' words, parted by white space, with comments left out. */
final class PnmWords {
    private static final int WORD_AT_MOST = 40;

    private final Stretch run;

    PnmWords(ArtBytes file, long at) {
        this.run = new Stretch(file, at, file.size(), false);
    }

    /** Where the byte after the last one read lies. */
    long at() {
        return run.position();
    }

    int octet() throws IOException {
        int octet = run.read();
        if (octet < 0) {
            throw new Unreadable("the picture data end early");
        }
        return octet;
    }

    /** The next word, and the one white space after it. */
    String word() throws IOException {
        StringBuilder word = new StringBuilder();
        for (int octet = firstOfWord(); !Character.isWhitespace(octet); octet = octet()) {
            word.append((char) octet);
            if (word.length() > WORD_AT_MOST) {
                throw new Unreadable("its header holds a word that is too long, \"" + word + "...\"");
            }
        }
        return word.toString();
    }

    int digit() throws IOException {
        int octet = firstOfWord();
        if (octet != '0' && octet != '1') {
            throw new Unreadable("the picture data are damaged");
        }
        return octet - '0';
    }

    /** The next number, and the one white space after it. */
    int number(int most, String what) throws IOException {
        int octet = firstOfWord();
        long number = 0;
        while (octet >= '0' && octet <= '9') {
            number = number * 10 + octet - '0';
            if (number > most) {
                throw new Unreadable("its " + what + " is " + number + " or more; at most " + most + " can be read");
            }
            octet = run.read();
        }
        if (octet >= 0 && !Character.isWhitespace(octet)) {
            throw new Unreadable("its " + what + " is not a number");
        }
        return (int) number;
    }

    private int firstOfWord() throws IOException {
        int octet = octet();
        while (Character.isWhitespace(octet) || octet == '#') {
            if (octet == '#') {
                while (octet != '\n' && octet != '\r') {
                    octet = octet();
                }
            }
            octet = octet();
        }
        return octet;
    }
}
