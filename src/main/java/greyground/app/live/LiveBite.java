package greyground.app.live;

import greyground.app.sight.LivePicture;

/**
 * One place of a plate as a bite of so many minutes would leave it.
 *
 * @param minutes in a fresh bath
 * @param depthMicrometres of a wide opening after them
 * @param coverage of the film at the place, 0 to 1
 * @param printLightness absolute CIE L* predicted of that tone
 * @param picture what the loupe sees
 */
public record LiveBite(
        double minutes, double depthMicrometres, double coverage, double printLightness, LivePicture picture) {}
