package greyground.picture;

import java.util.List;
import java.util.Locale;

/** Writes a {@link Drawing} as SVG (W3C, SVG 1.1 second edition): words stay words, in the nearest plain face there is. */
final class DrawnSvg {
    private DrawnSvg() {}

    /**
     * The whole document.
     *
     * @param title what it shows, for people who hear it read
     */
    static String of(Drawing drawing, String title, int ground) {
        StringBuilder svg = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"")
                .append(number(drawing.width()))
                .append("\" height=\"")
                .append(number(drawing.height()))
                .append("\" viewBox=\"0 0 ")
                .append(number(drawing.width()))
                .append(' ')
                .append(number(drawing.height()))
                .append("\" font-family=\"'Liberation Sans', Arial, Helvetica, sans-serif\">\n<title>")
                .append(escaped(title))
                .append("</title>\n<rect width=\"100%\" height=\"100%\" fill=\"")
                .append(colour(ground))
                .append("\"/>\n");
        drawing.marks().forEach(mark -> svg.append(element(mark)).append('\n'));
        return svg.append("</svg>\n").toString();
    }

    private static String element(Drawing.Mark mark) {
        if (mark instanceof Drawing.Line line) {
            String dash = line.dash() > 0 ? " stroke-dasharray=\"" + number(line.dash()) + "\"" : "";
            return "<polyline points=\"" + points(line.points()) + "\" fill=\"none\" stroke=\"" + colour(line.colour())
                    + "\" stroke-width=\"" + number(line.weight()) + "\" stroke-linejoin=\"round\"" + dash + "/>";
        } else if (mark instanceof Drawing.Area area) {
            return "<polygon points=\"" + points(area.points()) + "\" fill=\"" + colour(area.colour()) + "\"/>";
        } else if (mark instanceof Drawing.Dot dot) {
            String ring = dot.ring() < 0
                    ? ""
                    : " stroke=\"" + colour(dot.ring()) + "\" stroke-width=\"" + number(dot.radius() / 2.5) + "\"";
            return "<circle cx=\"" + number(dot.middle().x()) + "\" cy=\""
                    + number(dot.middle().y()) + "\" r=\"" + number(dot.radius()) + "\" fill=\"" + colour(dot.colour())
                    + "\"" + ring + "/>";
        }
        Drawing.Words words = (Drawing.Words) mark;
        String x = number(words.at().x());
        String y = number(words.at().y());
        String turn = words.quarterTurns() == 0
                ? ""
                : " transform=\"rotate(" + 90 * words.quarterTurns() + " " + x + " " + y + ")\"";
        String weight = words.heavy() ? " font-weight=\"bold\"" : "";
        return "<text x=\"" + x + "\" y=\"" + y + "\" font-size=\"" + number(words.size()) + "\" text-anchor=\""
                + words.anchor().name().toLowerCase(Locale.ROOT) + "\" fill=\"" + colour(words.colour()) + "\"" + weight
                + turn + ">" + escaped(words.text()) + "</text>";
    }

    private static String points(List<Drawing.Point> points) {
        StringBuilder list = new StringBuilder();
        for (Drawing.Point point : points) {
            list.append(list.isEmpty() ? "" : " ")
                    .append(number(point.x()))
                    .append(',')
                    .append(number(point.y()));
        }
        return list.toString();
    }

    private static String colour(int colour) {
        return String.format(Locale.ROOT, "#%06x", colour);
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
