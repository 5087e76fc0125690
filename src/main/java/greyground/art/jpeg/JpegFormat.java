package greyground.art.jpeg;

import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Interpretation;
import greyground.art.page.Page;
import greyground.art.page.RowPipe;
import greyground.art.page.RowSink;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import java.io.IOException;
import java.util.List;

/** Understands JPEG: grey, RGB, CMYK; baseline and progressive. Rows stream, so a baseline picture needs no memory. */
public final class JpegFormat implements ArtFormat {
    @Override
    public String kind() {
        return "JPEG";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) {
        return List.of(() -> page(file));
    }

    private static Page page(ArtBytes file) throws IOException {
        JpegHeader header = JpegHeader.read(file, 0, file.size());
        int channels = header.components();
        Samples samples = new Samples(header.width(), header.height(), channels, 1, true);
        Interpretation meaning = Interpretation.plain(
                channels == 1
                        ? Interpretation.Model.GREY
                        : channels == 3 ? Interpretation.Model.RGB : Interpretation.Model.CMYK);
        if (channels == 4 && header.adobe()) {
            meaning = meaning.inverse();
        }
        long pixels = (long) header.width() * header.height();
        long whole = channels == 4 ? pixels * 4 : 0;
        // A progressive picture's coefficients, two bytes each, wait in native memory until the last pass.
        whole += header.inPasses() ? pixels * channels * 2 : 0;
        return new Page(
                samples,
                meaning,
                header.profile(),
                header.orientation(),
                header.density(),
                8,
                (int) Math.max(1, Math.min(header.height(), (1 << 19) / samples.bytesPerRow())),
                false,
                whole,
                Page.PACKED,
                () -> rows(file, header, samples));
    }

    private static SampleRows rows(ArtBytes file, JpegHeader header, Samples samples) throws IOException {
        JpegDecoder decoder = new JpegDecoder();
        RowPipe.Source source = new RowPipe.Source() {
            @Override
            public void run(RowSink sink) throws IOException {
                try (decoder) {
                    decoder.decode(file, header, new byte[0], header.lumaAndChroma(), file.size(), sink);
                }
            }

            @Override
            public void abort() {
                decoder.abort();
            }
        };
        long limit = RowPipe.limitSeconds((long) header.width() * header.height());
        return new RowPipe(source, (int) samples.bytesPerRow(), limit);
    }
}
