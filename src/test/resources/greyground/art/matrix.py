"""Writes every cell of matrix.txt as a picture file, by a program that is none of ours, and decodes it by another.

matrix.py TABLE FOLDER [NNN...]: for each line "kind | feature | source | written by | read by" of TABLE, makes FOLDER/NNN.EXT and
FOLDER/NNN.light, linear luminance as 32-bit floats row by row, 1 for paper white. NNN keeps the lines of these numbers.
"Written by" is a shell command, or after "=" a Python expression, in which "@" is the file; "read by" is an expression that
gives coded samples 0..1 as rows x columns x (grey, grey and alpha, RGB, RGB and alpha), or luminance as rows x columns.
Prints a line for each cell: number, file, width, height, how far the decoded file strays from its source on average, or what failed.
"""

import io
import os
import struct
import sys
from concurrent.futures import ProcessPoolExecutor

import numpy as np
from PIL import Image, ImageCms

from matrix_files import *

# The Y row of sRGB's primaries adapted from D65 to D50 by Bradford, as an sRGB profile holds it (ICC.1, IEC 61966-2-1 annex F).
SRGB = np.array([0.2225045, 0.7168786, 0.0606169])
BRADFORD = np.array([[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]])
# White, red, green and blue as (x, y): red and green changed, so that primaries passed over show; and wide ones under D50.
SWAPPED = [(0.3127, 0.329), (0.3, 0.6), (0.64, 0.33), (0.15, 0.06)]
WARM = [(0.3457, 0.3585), (0.1152, 0.8264), (0.7347, 0.2653), (0.1566, 0.0177)]


# Light

def linear(coded):
    """IEC 61966-2-1:1999."""
    coded = np.clip(coded, 0, 1)
    return np.where(coded <= 0.04045, coded / 12.92, ((coded + 0.055) / 1.055) ** 2.4)


def light(samples, curve=linear, weights=SRGB):
    """Luminance of coded samples over paper white, mixed in linear light."""
    y = curve(samples[:, :, :3]) @ weights if samples.shape[2] > 2 else curve(samples[:, :, 0])
    if samples.shape[2] in (2, 4):
        y = y * samples[:, :, -1] + 1 - samples[:, :, -1]
    return np.clip(y, 0, 1)


def gamma(samples, exponent, corners=None):
    """Samples under a PNG's gAMA and, where given, cHRM: white, red, green, blue as (x, y), adapted to D50."""
    weights = SRGB
    if corners:
        xyz = np.array([[x / y, 1, (1 - x - y) / y] for x, y in corners])
        primaries = xyz[1:].T * np.linalg.solve(xyz[1:].T, xyz[0])
        turn = np.linalg.solve(BRADFORD, np.diag(BRADFORD @ D50 / (BRADFORD @ xyz[0])) @ BRADFORD)
        weights = (turn @ primaries)[1]
    return light(samples, lambda coded: np.clip(coded, 0, 1) ** exponent, weights)


def lightness(stars):
    """Luminance of L*, CIE 15:2004, 8.2.1.1."""
    f = (stars + 16) / 116
    return np.clip(np.where(stars > 8, f ** 3, stars * 27 / 24389), 0, 1)


# Independent readers

def anymap(data):
    """Samples 0..1 of a PBM, PGM, PPM or PAM."""
    stream = io.BytesIO(data)
    magic = stream.readline().split()[0]
    if magic == b"P7":
        words = {}
        while (line := stream.readline().split()) != [b"ENDHDR"]:
            words.update({line[0]: line[-1]} if line else {})
        width, height, depth, most = (int(words[w]) for w in (b"WIDTH", b"HEIGHT", b"DEPTH", b"MAXVAL"))
    else:
        numbers = []
        while len(numbers) < (2 if magic == b"P4" else 3):
            numbers += [int(n) for n in stream.readline().split(b"#")[0].split()]
        width, height, most = (numbers + [1])[:3]
        depth = 3 if magic == b"P6" else 1
    rest = stream.read()
    if magic == b"P4":
        bits = np.unpackbits(np.frombuffer(rest, np.uint8).reshape(height, -1), axis=1)[:, :width]
        return 1.0 - bits.reshape(height, width, 1)
    samples = np.frombuffer(rest, ">u2" if most > 255 else np.uint8, width * height * depth)
    return samples.reshape(height, width, depth) / most


def im(file, *options):
    """ImageMagick."""
    colours = ["-colorspace", "sRGB"] if "-set" not in options else []
    command = ["convert", file + ("" if "[" in file else "[0]"), *options, *colours, "-depth", "16", "pam:-"]
    return anymap(run(command))


def pil(file):
    """Pillow, in eight bits or in the sixteen or thirty-two of grey."""
    with Image.open(file) as picture:
        if picture.mode.startswith("I"):
            return np.asarray(picture, np.float64)[:, :, None] / 65535
        if picture.mode == "F":
            return np.asarray(picture, np.float64)[:, :, None]
        if picture.mode == "LAB":
            return lightness(np.asarray(picture.getchannel(0)) / 2.55)
        if picture.mode == "CMYK":
            inks = np.asarray(picture) / 255.0
            return (1 - inks[:, :, :3]) * (1 - inks[:, :, 3:])
        clear = "transparency" in picture.info
        plain = {"1": "L", "P": "RGB", "YCbCr": "RGB"}.get(picture.mode, picture.mode)
        return np.atleast_3d(np.asarray(picture.convert("RGBA" if clear else plain)) / 255.0)


def vips(command, file, *options):
    """A libvips operation from a file to numbers as they are: rows x columns x bands."""
    out = file + "." + command + ".v"
    run(["vips", command, file, out, *options])
    with open(out, "rb") as stream:
        head = struct.unpack("<16I", stream.read(64))
        types = {0: "u1", 1: "i1", 2: "<u2", 3: "<i2", 4: "<u4", 5: "<i4", 6: "<f4", 8: "<f8"}
        data = np.frombuffer(stream.read(), types[head[5]], head[1] * head[2] * head[3])
    return data.reshape(head[2], head[1], head[3]).astype(np.float64)


def dwebp(file, *options):
    return anymap(run(["dwebp", "-quiet", *options, "-pam", file, "-o", "-"]))


def profiled(file):
    """Little CMS, by libvips: relative colorimetric, to the Y of the connection space."""
    xyz = vips("icc_import", file, "--embedded", "--pcs", "xyz", "--intent", "relative")
    return np.clip(xyz[:, :, 1] / 100, 0, 1)


def net(file, command):
    """A reader of netpbm's, or any that prints an anymap."""
    return anymap(run(f"{command} {file}"))


def rgba(file):
    """libtiff's own way to RGB."""
    run(["tiff2rgba", "-c", "none", file, file + ".rgba.tif"])
    return pil(file + ".rgba.tif")


# The matrix

ENDS = {"TIFF": "tif", "JPEG": "jpg", "PNM": "ppm", "Radiance": "hdr", "JPEG 2000": "jp2", "HEIF": "heic"}


def cell(number, line):
    """Writes and reads one cell; returns the line to be printed."""
    kind, feature, source, written, reading = (part.strip().replace("\\|", "|") for part in line.split(" | "))
    f = f"{number:03}.{ENDS.get(kind, kind.lower().replace(' ', ''))}"
    try:
        if written.startswith("="):
            eval(written[1:], globals(), {"f": f})
        else:
            run(written.replace("@", f))
        if reading.startswith("refused"):
            return f"{number} {f} 0 0 0"
        y = eval(reading, globals(), {"f": f})
        y = light(y) if y.ndim == 3 else np.clip(y, 0, 1)
        y.astype(">f4").tofile(f"{number:03}.light")
        strayed = 0 if source == "-" else np.abs(y - light(FOUND[source])).mean()
        return f"{number} {f} {y.shape[1]} {y.shape[0]} {strayed:.5f}"
    except Exception as failed:
        return f"{number} failed: {kind}, {feature}: {type(failed).__name__} {failed}".replace("\n", " ")


if __name__ == "__main__":
    with open(sys.argv[1], encoding="utf-8") as table:
        lines = [(n, line) for n, line in enumerate(table, 1) if " | " in line and not line.startswith("#")]
    os.chdir(sys.argv[2])
    os.environ.update(MAGICK_THREAD_LIMIT="1", VIPS_CONCURRENCY="1", LC_ALL="C")
    make_sources()
    with ProcessPoolExecutor(os.cpu_count()) as pool:
        wanted = [(n, line) for n, line in lines if len(sys.argv) < 4 or str(n) in sys.argv[3:]]
        for answer in pool.map(cell, *zip(*wanted)):
            print(answer)
