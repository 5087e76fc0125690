package greyground.art;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Makes small sound pictures of every kind that is read, as seeds of mutation, with outside programs: argument FOLDER. The pictures in
 * {@code src/test/resources} were made by it, so that the tests themselves need none of those programs.
 */
final class ArtSeeds {
    private static final int WIDTH = 24;
    private static final int HEIGHT = 18;

    /** Each makes the file named last. */
    private static final List<String> COMMANDS = List.of(
            "convert c8.ppm -compress None stored.tif",
            "convert c16.ppm -compress LZW lzw16.tif",
            "convert c16.ppm -compress Zip deflate16.tif",
            "convert c8.ppm -compress RLE packbits.tif",
            "convert g16.pgm -compress None grey16.tif",
            "convert c8.ppm -colorspace CMYK -compress LZW cmyk.tif",
            "convert c8.ppm -colors 16 -type Palette -compress None palette.tif",
            "convert c8.ppm -alpha set -channel A -evaluate set 60% -compress None alpha.tif",
            "convert c8.ppm -colorspace Lab -compress None lab.tif",
            "convert c8.ppm -interlace plane -compress None planes.tif",
            "convert c8.ppm -endian MSB -compress None -orient RightTop turned.tif",
            "convert c8.ppm ( g8.pgm -negate ) -compress None pages.tif",
            "tiffcp -c jpeg:90 -r 16 c8.tif jpeg.tif",
            "tiffcp -c g4 -r 16 bits.tif fax4.tif",
            "tiffcp -c g3:2d -r 16 bits.tif fax3.tif",
            "tiffcp -c lzw -t -w 16 -l 16 c8.tif tiles.tif",
            "tiffcp -8 -c zip c8.tif big.tif",
            "tiffcp -c lzw:2 -r 4 c8.tif predicted.tif",
            "convert c8.ppm rgb8.png",
            "convert c16.ppm rgb16.png",
            "convert g8.pgm -depth 4 grey4.png",
            "convert bits.pbm bit.png",
            "convert c8.ppm -colors 8 -type Palette palette.png",
            "convert c8.ppm -alpha set -channel A -evaluate set 60% alpha.png",
            "convert c8.ppm -interlace PNG interlaced.png",
            "convert c8.ppm -sampling-factor 2x2 plain.jpg",
            "convert c8.ppm -interlace JPEG progressive.jpg",
            "convert c8.ppm -colorspace CMYK cmyk.jpg",
            "convert g8.pgm grey.jpg",
            "convert c8.ppm -define webp:lossless=true lossless.webp",
            "convert c8.ppm lossy.webp",
            "convert c8.ppm -alpha set -channel A -evaluate set 60% alpha.webp",
            "convert c8.ppm packed.psd",
            "convert c16.ppm -compress None stored16.psd",
            "convert c8.ppm -colorspace CMYK cmyk.psd",
            "convert c8.ppm bits24.bmp",
            "convert c8.ppm -alpha set bits32.bmp",
            "convert c8.ppm -colors 16 -type Palette -compress None palette.bmp",
            "convert bits.pbm -type Palette bits1.bmp",
            "convert c8.ppm -compress None plain.ppm",
            "convert c16.ppm raw16.ppm",
            "convert g8.pgm -compress None plain.pgm",
            "convert bits.pbm raw.pbm",
            "convert bits.pbm -compress None plain.pbm");

    private ArtSeeds() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        Path work = Files.createTempDirectory("art-seeds");
        Picture.chart(WIDTH, HEIGHT, 3).write(work.resolve("c8.ppm"), 8);
        Picture.chart(WIDTH, HEIGHT, 3).write(work.resolve("c16.ppm"), 16);
        Picture.chart(WIDTH, HEIGHT, 1).write(work.resolve("g8.pgm"), 8);
        Picture.chart(WIDTH, HEIGHT, 1).write(work.resolve("g16.pgm"), 16);
        OutsideTools.run(work, "convert c8.ppm -compress None c8.tif");
        OutsideTools.run(work, "convert g8.pgm -threshold 50% bits.pbm");
        OutsideTools.run(work, "convert bits.pbm -compress None bits.tif");
        for (String command : COMMANDS) {
            String name = command.substring(command.lastIndexOf(' ') + 1);
            OutsideTools.run(work, command.replaceFirst("^convert ", "convert -strip "));
            Files.write(folder.resolve(name), Files.readAllBytes(work.resolve(name)));
            Art.open(folder.resolve(name));
        }
        Path profiled = folder.resolve("profile.tif");
        Files.write(
                profiled,
                TestTiff.of(1, 1, 3, 2, 9, 99, 999)
                        .profile(TestProfiles.rgb(
                                TestProfiles.gamma(1.8), TestProfiles.gamma(1.8), TestProfiles.gamma(1.8)))
                        .bytes());
        System.out.println(Art.open(profiled));
    }
}
