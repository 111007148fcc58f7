package photo

import (
	"encoding/binary"
	"image"
)

// held is how the camera was held: where in the file's picture the rows of the photograph lie.
type held struct {
	turned    bool // its rows are the file's columns
	fromRight bool // what is counted across the file's picture begins at its right
	fromBelow bool // what is counted down it begins at its bottom
}

// ways are the orientations 1 to 8 (Exif 2.32, CIPA DC-008-2019, tag 274).
var ways = [...]held{
	1: {}, 2: {fromRight: true}, 3: {fromRight: true, fromBelow: true}, 4: {fromBelow: true},
	5: {turned: true}, 6: {turned: true, fromBelow: true}, 7: {turned: true, fromRight: true, fromBelow: true}, 8: {turned: true, fromRight: true},
}

// heldAs reads the orientation from the segments of a JPEG; a file that does not say was held upright.
func heldAs(b []byte) held {
	for i := 2; i+4 <= len(b) && b[0] == 0xff && b[1] == 0xd8 && b[i] == 0xff; {
		long := int(binary.BigEndian.Uint16(b[i+2:]))
		if long < 2 || i+2+long > len(b) {
			break
		}
		if segment := b[i+4 : i+2+long]; b[i+1] == 0xe1 && len(segment) > 14 && string(segment[:6]) == "Exif\x00\x00" {
			return tagged(segment[6:])
		}
		i += 2 + long
	}
	return held{}
}

// tagged looks for the orientation in the first directory behind a TIFF header of 8 bytes.
func tagged(b []byte) held {
	var order binary.ByteOrder = binary.LittleEndian
	if string(b[:2]) == "MM" {
		order = binary.BigEndian
	}
	at := int64(order.Uint32(b[4:]))
	if at < 8 || at+2 > int64(len(b)) {
		return held{}
	}
	entries := b[at+2:]
	for range order.Uint16(b[at:]) {
		if len(entries) < 12 {
			break
		}
		if v := order.Uint16(entries[8:]); order.Uint16(entries) == 0x0112 && v >= 1 && int(v) < len(ways) {
			return ways[v]
		}
		entries = entries[12:]
	}
	return held{}
}

// upright is the file's picture as it was seen.
func (h held) upright(from *image.RGBA) *image.RGBA {
	if h == (held{}) {
		return from
	}
	size := from.Rect
	if h.turned {
		size = image.Rect(0, 0, size.Dy(), size.Dx())
	}
	out := image.NewRGBA(size)
	for y := range size.Dy() {
		for x := range size.Dx() {
			u, v := x, y
			if h.turned {
				u, v = y, x
			}
			if h.fromRight {
				u = from.Rect.Dx() - 1 - u
			}
			if h.fromBelow {
				v = from.Rect.Dy() - 1 - v
			}
			copy(out.Pix[out.PixOffset(x, y):][:4], from.Pix[from.PixOffset(u, v):][:4])
		}
	}
	return out
}
