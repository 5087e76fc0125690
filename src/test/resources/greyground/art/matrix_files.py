"""The matrix's source pictures, and files that no program here writes, put together from what one wrote."""

import io
import struct
import subprocess
import zlib

import numpy as np
from PIL import Image

WIDTH, HEIGHT = 101, 67
D50 = np.array([0.9642, 1, 0.8249])
FOUND = {}  # every source's samples, 0..1, by name


def run(command):
    """What a program prints; a shell is started only where one is needed."""
    shell = isinstance(command, str) and any(sign in command for sign in "<>|&'\"")
    words = command if shell or not isinstance(command, str) else command.split()
    done = subprocess.run(words, shell=shell, capture_output=True)
    if done.returncode:
        raise RuntimeError(f"{command}: {done.stderr.decode(errors='replace').strip()[-300:]}")
    return done.stdout


def opened(name):
    """A source for Pillow to write, read whole so that threads may share the file."""
    with Image.open(name) as picture:
        picture.load()
        return picture


# Files that no program here writes are put together from what one wrote

def changed(file, where, *values):
    """Overwrites bytes of a file."""
    with open(file, "r+b") as stream:
        stream.seek(where)
        stream.write(bytes(values))


def chunked(file, *chunks):
    """Puts (name, data) chunks after a PNG's header."""
    data = read(file)
    added = b"".join(struct.pack(">I", len(d)) + n + d + struct.pack(">I", zlib.crc32(n + d)) for n, d in chunks)
    save(file, data[:33] + added + data[33:])


def chromaticities(corners):
    return b"cHRM", struct.pack(">8I", *(round(v * 100000) for corner in corners for v in corner))


def read(file):
    with open(file, "rb") as stream:
        return stream.read()


def save(file, data):
    with open(file, "wb") as stream:
        stream.write(data)


def tiff(file, strip, **tags):
    """A TIFF of one strip, little-endian; tags by number as t258=(8, 8, 8); bytes, fractions and numbers tell their type."""
    entries = {256: WIDTH, 257: HEIGHT, 259: 1, 262: 1, 273: 8, 277: 1, 278: HEIGHT, 279: len(strip)}
    entries.update({int(k[1:]): v for k, v in tags.items()})
    body, directory = bytearray(strip + b"\0" * (len(strip) % 2)), b""
    for tag, value in sorted(entries.items()):
        many = (value,) if isinstance(value, int) else value
        kind, coded = 4, struct.pack(f"<{len(many)}I", *many) if not isinstance(many, bytes) else many
        if isinstance(many, bytes):
            kind = 7
        elif max(many) < 65536 and tag not in (273, 279):
            kind, coded = 3, struct.pack(f"<{len(many)}H", *many)
        if len(coded) > 4:
            place = struct.pack("<I", 8 + len(body))
            body += coded + b"\0" * (len(coded) % 2)
        else:
            place = coded.ljust(4, b"\0")
        directory += struct.pack("<HHI", tag, kind, len(many)) + place
    head = b"II*\0" + struct.pack("<I", 8 + len(body))
    save(file, head + bytes(body) + struct.pack("<H", len(entries)) + directory + b"\0\0\0\0")


def bmp(file, head, rows, table=b"", bits=32, compression=0, height=HEIGHT):
    """A BMP with a header of ``head`` bytes: 12 or 40, or longer with masks in ``table``."""
    info = struct.pack("<IHHHH", 12, WIDTH, height, 1, bits) if head == 12 else (
        struct.pack("<IiiHHIIiiII", head, WIDTH, height, 1, bits, compression, len(rows), 0, 0, 0, 0))
    start = 14 + len(info) + len(table)
    save(file, struct.pack("<2sIHHI", b"BM", start + len(rows), 0, 0, start) + info + table + rows)


def wide(file, source, bits, meaning, less=0, **more):
    """A TIFF of whole bytes to a sample, as its writers here can't make."""
    samples = (np.round(FOUND[source] * (2 ** bits - 1)).astype(np.int64) - less).astype("<i4").reshape(-1, 1).view(np.uint8)[:, :bits // 8]
    tiff(file, samples.tobytes(), t258=(bits,) * FOUND[source].shape[2], t262=meaning, t277=FOUND[source].shape[2], **more)


def signed(file, source, bits):
    """A TIFF of signed samples; the least the type can hold is black (TIFF 6.0, SMinSampleValue)."""
    wide(file, source, bits, 1 if source.startswith("grey") else 2, t339=(2,) * FOUND[source].shape[2], less=2 ** (bits - 1))


def subsampled(file, across, down):
    """A YCbCr TIFF with data units of TIFF 6.0, section 21."""
    padded = np.pad(np.asarray(opened("rgb8.png")), ((0, -HEIGHT % down), (0, -WIDTH % across), (0, 0)), "edge")
    planes = np.asarray(Image.fromarray(padded).convert("YCbCr"), np.float64)
    blocks = planes.reshape(len(planes) // down, down, -1, across, 3).swapaxes(1, 2)
    luma = blocks[..., 0].reshape(*blocks.shape[:2], -1)
    units = np.concatenate([luma, np.round(blocks[..., 1:].mean((2, 3)))], 2)
    tiff(file, units.astype(np.uint8).tobytes(), t258=(8, 8, 8), t262=6, t277=3, t530=(across, down))


def old_jpeg(file, picture, meaning):
    """The JPEG compression of TIFF 6.0, section 22, as most wrote it: a whole JPEG file within."""
    stream = io.BytesIO()
    picture.save(stream, "JPEG", quality=95, subsampling=0)
    samples = 3 if meaning == 6 else 1
    more = {"t530": (1, 1)} if meaning == 6 else {}
    tiff(file, stream.getvalue(), t258=(8,) * samples, t259=6, t262=meaning, t277=samples, t512=1, t513=8,
         t514=len(stream.getvalue()), **more)


def bgr(source, size):
    """Rows from the top, blue first, padded to four bytes."""
    samples = np.round(FOUND[source][:, :, 2::-1] * 255).astype(np.uint8)
    rows = np.dstack([samples, np.zeros((HEIGHT, WIDTH, size - 3), np.uint8)]).reshape(HEIGHT, -1)
    if size == 4:
        rows = rows[::-1]
    return np.pad(rows, ((0, 0), (0, -rows.shape[1] % 4))).tobytes()


def mask31():
    r, g, b = np.round(FOUND["rgb8"] * 255).astype(np.uint32).transpose(2, 0, 1)
    return (r << 24 | g << 16 | b << 8)[::-1].astype("<u4").tobytes()


def mask10():
    r, g, b = np.round(FOUND["rgb16"] * 1023).astype(np.uint32).transpose(2, 0, 1)
    return (r << 22 | g << 12 | b << 2)[::-1].astype("<u4").tobytes()


def bmp_rle4(file):
    """Runs and literal stretches of sixteen greys."""
    levels = np.round(FOUND["grey8"][::-1, :, 0] * 15).astype(int)
    coded = bytearray()
    for y, row in enumerate(levels):
        x = 0
        while x < WIDTH:
            if y % 3 and WIDTH - x >= 8:
                coded += bytes([0, 8]) + bytes(row[x + i] << 4 | row[x + i + 1] for i in (0, 2, 4, 6))
                x += 8
            else:
                run_length = 1
                while x + run_length < WIDTH and run_length < 255 and row[x + run_length] == row[x]:
                    run_length += 1
                coded += bytes([run_length, row[x] * 17])
                x += run_length
        coded += b"\0\0"
    bmp(file, 40, bytes(coded) + b"\0\1", b"".join(bytes([17 * i] * 3 + [0]) for i in range(16)), bits=4, compression=2)


def fractions(file, source, icc):
    """A PSD of 32-bit fractions, channel after channel, with a profile as image resource 1039 or none."""
    rows, columns, channels = FOUND[source].shape
    resource = b"8BIM" + struct.pack(">HHI", 1039, 0, len(icc)) + icc + b"\0" * (len(icc) % 2) if icc else b""
    head = b"8BPS\0\1" + bytes(6) + struct.pack(">HIIHH", channels, rows, columns, 32, 3)
    sections = struct.pack(">II", 0, len(resource)) + resource + struct.pack(">IH", 0, 0)
    save(file, head + sections + FOUND[source].transpose(2, 0, 1).astype(">f4").tobytes())


def over_white(source, file):
    """Colour mixed with white by its alpha, as a PSD's merged picture holds it."""
    samples = FOUND[source]
    alpha = samples[:, :, -1:]
    mixed = np.dstack([samples[:, :, :-1] * alpha + 1 - alpha, alpha])
    Image.fromarray(np.round(mixed * 255).astype(np.uint8)).save(file)


def apart(samples):
    """The colour before it was laid over white."""
    alpha = np.maximum(samples[:, :, -1:], 1e-6)
    return np.dstack([np.clip((samples[:, :, :-1] - 1 + alpha) / alpha, 0, 1), samples[:, :, -1:]])


def turned(orientation):
    exif = Image.Exif()
    exif[274] = orientation
    return exif.tobytes()


def padded(data, size):
    """A profile made longer by bytes that no tag points to."""
    return struct.pack(">I", size) + data[4:] + bytes(size - len(data))


def resliced(file, size):
    """A PNG whose data chunk is cut into many."""
    data, place, packed, rest = read(file), 8, b"", []
    while place < len(data):
        length, name = struct.unpack(">I4s", data[place:place + 8])
        body = data[place + 8:place + 8 + length]
        if name == b"IDAT":
            packed += body
        else:
            rest.append((name, body))
        place += 12 + length
    save(file, data[:33] + data[-12:])
    chunked(file, *rest[1:-1], *((b"IDAT", packed[i:i + size]) for i in range(0, len(packed), size)))


def arithmetic(file):
    """A JPEG whose frame says that it is coded arithmetically."""
    opened("rgb8.png").save(file)
    save(file, read(file).replace(b"\xff\xc0", b"\xff\xc9", 1))


# Sources

def make_sources():
    """Pictures with all corners distinct, full black and white, slow slopes and a few hard edges."""
    y, x = np.mgrid[0:HEIGHT, 0:WIDTH]
    u, v = x / (WIDTH - 1), y / (HEIGHT - 1)
    rgb = np.stack([u, 0.15 + 0.7 * v, 0.5 + 0.5 * np.sin(5 * u + 3 * v)], 2)
    rgb[8:24, 8:32] = 0
    rgb[8:24, 32:56] = 1
    rgb[40:56, 64:88] = (0.9, 0.15, 0.1)
    rgb[40:56, 40:64] = (0.1, 0.3, 0.8)
    grey = (0.85 * u + 0.15 * v)[:, :, None].copy()
    grey[8:24, 8:32], grey[8:24, 32:56], grey[40:56, 64:88] = 0, 1, 0.3
    alpha = np.clip(1.2 - 1.4 * np.hypot(u - 0.4, v - 0.6), 0, 1)[:, :, None]
    bits = ((x * 7 + y * 13 + (x * y) // 5) % 32 < 3 + 28 * u)[:, :, None] * 1.0
    bits[8:24, 8:32], bits[8:24, 32:56] = 0, 1
    for name, samples in {"rgb": rgb, "grey": grey, "rgba": np.dstack([rgb, alpha]), "la": np.dstack([grey, alpha])}.items():
        FOUND[name + "8"] = np.round(samples * 255) / 255
        FOUND[name + "16"] = np.round(samples * 65535) / 65535
    FOUND["bits"] = bits
    for name, samples in FOUND.items():
        if name == "bits":
            Image.fromarray(bits[:, :, 0] > 0).save("bits.pbm")
            continue
        most = 65535 if name.endswith("16") else 255
        depth = samples.shape[2]
        data = np.round(samples * most).astype(">u2" if most > 255 else np.uint8).tobytes()
        kinds = ["GRAYSCALE", "GRAYSCALE_ALPHA", "RGB", "RGB_ALPHA"]
        head = f"P7\nWIDTH {WIDTH}\nHEIGHT {HEIGHT}\nDEPTH {depth}\nMAXVAL {most}\nTUPLTYPE {kinds[depth - 1]}\nENDHDR\n"
        save(name + ".pam", head.encode() + data)
        if depth in (1, 3):
            save(name + (".ppm" if depth == 3 else ".pgm"), f"P{depth // 2 + 5}\n{WIDTH} {HEIGHT}\n{most}\n".encode() + data)
    for name in FOUND:
        source = name + {"b": ".pbm", "g": ".pgm", "r": ".ppm", "l": ".pam"}["l" if "a" in name else name[0]]
        for end in ("png", "tif"):
            colour = ["-define", f"png:color-type={(0, 4, 2, 6)[FOUND[name].shape[2] - 1]}"] if end == "png" else []
            plain = ["-define", "png:exclude-chunks=gAMA,cHRM,bKGD,date,tIME"]
            run(["convert", source, *colour, *plain, "-compress", "Zip" if end == "png" else "None", f"{name}.{end}"])
    for photometric in ("white", "black"):
        run(f"convert bits.pbm -define quantum:polarity=min-is-{photometric} -compress None {photometric}.tif")
    run("pamtopnm < rgb8.pam | pnmquant 200 > palette.ppm")
    for name, data in {"wide": profile(1.8), "swapped": profile(1.8, True), "grey": grey_profile(1.5)}.items():
        save(name + ".icc", data)


def profile(exponent, swapped=False):
    """A matrix profile with wide primaries; ``swapped`` changes red with green, so that a profile passed over shows."""
    def fixed(*values):
        return b"".join(struct.pack(">i", round(v * 65536)) for v in values)
    columns = [(0.6097, 0.3111, 0.0195), (0.2053, 0.6257, 0.0609), (0.1492, 0.0632, 0.7445)]
    if swapped:
        columns[0], columns[1] = columns[1], columns[0]
    curve = b"curv\0\0\0\0" + struct.pack(">IHH", 1, round(exponent * 256), 0)
    tags = {"desc": b"desc\0\0\0\0" + struct.pack(">I", 5) + b"wide\0" + bytes(87), "cprt": b"text\0\0\0\0none\0\0\0\0",
            "wtpt": b"XYZ \0\0\0\0" + fixed(*D50)}
    for letter, column in zip("rgb", columns):
        tags[letter + "XYZ"] = b"XYZ \0\0\0\0" + fixed(*column)
        tags[letter + "TRC"] = curve
    return icc("RGB ", tags)


def grey_profile(exponent):
    curve = b"curv\0\0\0\0" + struct.pack(">IHH", 1, round(exponent * 256), 0)
    white = b"".join(struct.pack(">i", round(v * 65536)) for v in D50)
    return icc("GRAY", {"desc": b"desc\0\0\0\0" + struct.pack(">I", 5) + b"grey\0" + bytes(87),
                        "cprt": b"text\0\0\0\0none\0\0\0\0", "wtpt": b"XYZ \0\0\0\0" + white, "kTRC": curve})


def icc(space, tags):
    table, data = struct.pack(">I", len(tags)), b""
    start = 132 + 12 * len(tags)
    for name, tag in tags.items():
        tag += bytes(-len(tag) % 4)
        table += name.encode() + struct.pack(">II", start + len(data), len(tag))
        data += tag
    head = struct.pack(">III", start + len(data), 0, 0x02400000) + b"mntr" + space.encode() + b"XYZ " + bytes(12) + b"acsp"
    return head.ljust(68, b"\0") + struct.pack(">III", 0xF6D6, 0x10000, 0xD32D) + bytes(48) + table + data


