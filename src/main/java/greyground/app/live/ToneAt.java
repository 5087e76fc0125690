package greyground.app.live;

/**
 * One place's tone on its way from art to print, were the tone even round it.
 *
 * @param artLightness CIE L* of the art there, 0 to 100
 * @param coverage of the film, 0 to 1
 * @param inkMicrometres in the plate, as a film over the whole
 * @param printLightness absolute CIE L* of the print
 */
public record ToneAt(double artLightness, double coverage, double inkMicrometres, double printLightness) {}
