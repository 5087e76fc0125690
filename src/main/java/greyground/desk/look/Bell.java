package greyground.desk.look;

import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;

/** Three tones at the end of a step, made here. A machine without sound stays silent, and the window shows the end anyway. */
public final class Bell {
    private static final float RATE = 44_100;
    private static final double PITCH_HERTZ = 880;
    private static final double TONE_SECONDS = 0.35;
    private static final double PAUSE_SECONDS = 0.25;
    private static final int TONES = 3;

    private Bell() {}

    /** Rings, without waiting for the end. */
    public static void ring() {
        Thread thread = new Thread(Bell::play, "bell");
        thread.setDaemon(true);
        thread.start();
    }

    private static void play() {
        AudioFormat format = new AudioFormat(RATE, 16, 1, true, false);
        try (SourceDataLine line = AudioSystem.getSourceDataLine(format)) {
            line.open(format);
            line.start();
            byte[] samples = samples();
            line.write(samples, 0, samples.length);
            line.drain();
        } catch (LineUnavailableException | IllegalArgumentException | SecurityException silent) {
            // The sign in the window must do.
            return;
        } catch (LinkageError noSoundHere) {
            return;
        }
    }

    /** 16-bit samples, low byte first. */
    public static byte[] samples() {
        int tone = (int) (RATE * TONE_SECONDS);
        int whole = tone + (int) (RATE * PAUSE_SECONDS);
        byte[] samples = new byte[2 * whole * TONES];
        for (int i = 0; i < TONES * whole; i++) {
            int within = i % whole;
            if (within < tone) {
                // It swells and dies away, so that no edge clicks.
                double strength = Math.min(1, Math.min(within, tone - within) / (0.02 * RATE));
                int value = (int) (24_000 * strength * Math.sin(2 * Math.PI * PITCH_HERTZ * within / RATE));
                samples[2 * i] = (byte) value;
                samples[2 * i + 1] = (byte) (value >> 8);
            }
        }
        return samples;
    }
}
