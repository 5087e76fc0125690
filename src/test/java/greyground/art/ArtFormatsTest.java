package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One contract for every kind of file: written by vips, ImageMagick, libtiff or libwebp, it decodes to the luminance of what
 * ImageMagick decodes from the same file.
 */
class ArtFormatsTest {
    @TempDir
    static Path folder;

    @BeforeAll
    static void drawCharts() throws Exception {
        OutsideTools.need("convert");
        Picture.chart(61, 47, 3).write(folder.resolve("rgb16.ppm"), 16);
        Picture.chart(61, 47, 3).write(folder.resolve("rgb8.ppm"), 8);
        Picture.chart(61, 47, 1).write(folder.resolve("grey16.pgm"), 16);
        Picture.chart(61, 47, 1).write(folder.resolve("grey8.pgm"), 8);
        OutsideTools.run(folder, "convert rgb16.ppm -compress None rgb16.tif");
        OutsideTools.run(folder, "convert rgb8.ppm -compress None rgb8.tif");
        OutsideTools.run(folder, "convert grey16.pgm -compress None grey16.tif");
        OutsideTools.run(folder, "convert grey8.pgm -compress None grey8.tif");
        OutsideTools.run(folder, "convert grey8.pgm -threshold 50% bits.pbm");
        OutsideTools.run(folder, "convert bits.pbm -compress None bits.tif");
    }

    // Columns: file to be written; kind; bits of a sample; the command; how far, of 65 535, a sample may lie from
    // ImageMagick's.
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "a1.tif, TIFF, 16, convert rgb16.ppm -compress None a1.tif, 1",
        "a2.tif, TIFF, 16, convert rgb16.ppm -compress LZW a2.tif, 1",
        "a3.tif, TIFF, 16, convert rgb16.ppm -compress Zip a3.tif, 1",
        "a4.tif, TIFF, 16, convert rgb16.ppm -compress RLE a4.tif, 1",
        "a5.tif, TIFF, 8, convert rgb8.ppm -compress LZW -define tiff:rows-per-strip=7 a5.tif, 1",
        "a6.tif, TIFF, 16, convert rgb16.ppm -endian MSB -compress None a6.tif, 1",
        "b1.tif, TIFF, 16, tiffcp -c lzw:2 -r 5 rgb16.tif b1.tif, 1",
        "b2.tif, TIFF, 16, tiffcp -c zip:2 -B -r 5 rgb16.tif b2.tif, 1",
        "b3.tif, TIFF, 8, tiffcp -c lzw:2 -t -w 32 -l 16 rgb8.tif b3.tif, 1",
        "b4.tif, TIFF, 16, tiffcp -c zip:2 -t -w 16 -l 32 grey16.tif b4.tif, 1",
        "b5.tif, TIFF, 8, tiffcp -p separate -c lzw:2 -r 9 rgb8.tif b5.tif, 1",
        "b6.tif, TIFF, 8, tiffcp -p separate -c none -r 9 rgb8.tif b6.tif, 1",
        "b7.tif, TIFF, 8, tiffcp -c jpeg:95 -r 16 rgb8.tif b7.tif, 700",
        "b8.tif, TIFF, 8, tiffcp -c jpeg:r:95 -r 16 rgb8.tif b8.tif, 700",
        "b9.tif, TIFF, 8, tiffcp -c jpeg:95 -t -w 32 -l 32 grey8.tif b9.tif, 700",
        "c1.tif, TIFF, 8, tiffcp -8 -c packbits -r 11 rgb8.tif c1.tif, 1",
        "c2.tif, TIFF, 8, tiffcp -f lsb2msb -c none rgb8.tif c2.tif, 1",
        "c3.tif, TIFF, 8, tiffcp -f lsb2msb -c lzw grey8.tif c3.tif, 1",
        "d1.tif, TIFF, 1, tiffcp -c g4 bits.tif d1.tif, 1",
        "d2.tif, TIFF, 1, tiffcp -c g3:2d -r 8 bits.tif d2.tif, 1",
        "d3.tif, TIFF, 1, tiffcp -c g4 -r 8 -f lsb2msb bits.tif d3.tif, 1",
        "d4.tif, TIFF, 1, tiffcp -c none bits.tif d4.tif, 1",
        "d5.tif, TIFF, 1, tiffcp -c packbits -r 3 bits.tif d5.tif, 1",
        "e1.tif, TIFF, 8, convert grey8.pgm -define quantum:polarity=min-is-white -compress LZW e1.tif, 1",
        "e2.tif, TIFF, 1, convert bits.pbm -define quantum:polarity=min-is-black -compress None e2.tif, 1",
        "e3.tif, TIFF, 8, convert rgb8.ppm -colors 200 -type Palette -compress LZW e3.tif, 1",
        "e4.tif, TIFF, 4, convert rgb8.ppm -colors 13 -type Palette -depth 4 -compress None e4.tif, 1",
        "e5.tif, TIFF, 8, convert rgb8.ppm -colorspace CMYK -compress LZW e5.tif, 3",
        "e6.tif, TIFF, 16, convert rgb16.ppm -colorspace CMYK -compress None e6.tif, 40",
        "f1.tif, TIFF, 16, vips copy rgb16.ppm f1.tif[bigtiff], 1",
        "f2.tif, TIFF, 8, 'vips copy rgb8.ppm f2.tif[bigtiff,tile,tile-width=32,tile-height=32,compression=deflate,predictor=horizontal]', 1",
        "f3.tif, TIFF, 16, 'vips copy grey16.pgm f3.tif[compression=lzw,predictor=horizontal]', 1",
        "g1.png, PNG, 16, convert rgb16.ppm PNG48:g1.png, 1",
        "g2.png, PNG, 8, convert rgb8.ppm PNG24:g2.png, 1",
        "g3.png, PNG, 8, convert rgb8.ppm -interlace PNG PNG24:g3.png, 1",
        "g4.png, PNG, 8, convert rgb8.ppm -colors 100 PNG8:g4.png, 1",
        "g5.png, PNG, 8, vips copy grey8.pgm g5.png, 1",
        "g6.png, PNG, 16, vips copy grey16.pgm g6.png[interlace], 1",
        "g7.png, PNG, 1, convert bits.pbm -define png:bit-depth=1 -define png:color-type=0 g7.png, 1",
        "g8.png, PNG, 4, convert grey8.pgm -depth 4 -define png:bit-depth=4 -define png:color-type=0 g8.png, 1",
        "g9.png, PNG, 2, convert grey8.pgm -interlace PNG -depth 2 -define png:bit-depth=2 -define png:color-type=0 g9.png, 1",
        "h1.jpg, JPEG, 8, convert rgb8.ppm -quality 95 h1.jpg, 700",
        "h2.jpg, JPEG, 8, convert rgb8.ppm -sampling-factor 1x1 -interlace JPEG h2.jpg, 700",
        "h3.jpg, JPEG, 8, convert grey8.pgm -quality 90 h3.jpg, 700",
        "h4.jpg, JPEG, 8, convert rgb8.ppm -colorspace CMYK -quality 95 h4.jpg, 900",
        "h5.jpg, JPEG, 8, 'vips copy rgb8.ppm h5.jpg[Q=90,interlace]', 700",
        "i1.webp, WebP, 8, convert rgb8.ppm -define webp:lossless=true i1.webp, 1",
        "i2.webp, WebP, 8, cwebp -quiet -q 90 g2.png -o i2.webp, 3000",
        "j1.psd, PSD, 8, convert rgb8.ppm j1.psd, 1",
        "j2.psd, PSD, 16, convert grey16.pgm j2.psd, 1",
        "j3.psd, PSD, 8, convert rgb8.ppm -colorspace CMYK -compress None j3.psd, 3",
        "j4.psd, PSD, 16, convert rgb16.ppm -compress RLE j4.psd, 1",
        "j5.psb, PSD, 8, convert rgb8.ppm j5.psb, 1",
        "k1.bmp, BMP, 8, convert rgb8.ppm BMP3:k1.bmp, 1",
        "k2.bmp, BMP, 8, convert rgb8.ppm -colors 60 -type Palette -compress None BMP3:k2.bmp, 1",
        "k3.bmp, BMP, 1, convert bits.pbm -type bilevel BMP3:k3.bmp, 1",
        "k4.bmp, BMP, 8, convert rgb8.ppm -alpha set BMP:k4.bmp, 1",
        "k5.bmp, BMP, 8, convert rgb8.ppm -colors 60 -type Palette -compress RLE BMP3:k5.bmp, 1",
        "k6.bmp, BMP, 8, convert rgb8.ppm BMP2:k6.bmp, 1",
        "m1.tga, TGA, 8, convert rgb8.ppm m1.tga, 1",
        "m2.tga, TGA, 8, convert rgb8.ppm -compress RLE m2.tga, 1",
        "m3.tga, TGA, 8, convert grey8.pgm m3.tga, 1",
        "m4.sgi, SGI, 8, convert rgb8.ppm m4.sgi, 1",
        "m5.sgi, SGI, 16, convert rgb16.ppm -compress RLE m5.sgi, 1",
        "m6.pcx, PCX, 8, convert rgb8.ppm m6.pcx, 1",
        "m7.pcx, PCX, 8, convert rgb8.ppm -colors 60 -type Palette m7.pcx, 1",
        "m8.ico, ICO, 8, convert rgb8.ppm m8.ico, 1",
        "m9.gif, GIF, 8, convert rgb8.ppm -colors 60 -type Palette m9.gif, 1",
        "l1.pbm, PNM, 1, convert bits.pbm -compress None l1.pbm, 1",
        "l2.pbm, PNM, 1, convert bits.pbm l2.pbm, 1",
        "l3.pgm, PNM, 16, convert grey16.pgm -compress None l3.pgm, 1",
        "l4.ppm, PNM, 8, convert rgb8.ppm -compress None l4.ppm, 1",
        "l5.ppm, PNM, 16, convert rgb16.ppm l5.ppm, 1",
    })
    void decodesWhatAnIndependentToolWrote(String name, String kind, int bits, String command, double tolerance)
            throws Exception {
        if (command.contains("g2.png -o") && !Files.exists(folder.resolve("g2.png"))) {
            OutsideTools.run(folder, "convert rgb8.ppm PNG24:g2.png");
        }
        OutsideTools.run(folder, command);
        Path file = folder.resolve(name);
        OutsideTools.run(
                folder,
                "convert " + name + "[0] -auto-orient -colorspace sRGB -depth 16 -type TrueColor -compress Undefined "
                        + name + ".ppm");
        Picture expected = Picture.read(folder.resolve(name + ".ppm"));
        Art art = Art.open(file);
        assertEquals(kind, art.kind());
        assertEquals(bits, art.bitsPerSample());
        assertEquals("61 x 47", art.width() + " x " + art.height());
        try (GreyPlane plane = art.decode(Progress.NONE, 256L << 20, folder)) {
            double farthest = expected.farthest(plane);
            assertTrue(farthest <= tolerance, () -> art + ": " + farthest + " codes away");
        }
    }
}
