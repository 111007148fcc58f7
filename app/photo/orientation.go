package photo

import (
	"encoding/binary"
	"image"
)

// orientation is how the camera was held, from 1 to 8 (Exif 2.3, tag 0x0112; CIPA DC-008, 2012); 1 where
// the file does not say.
func orientation(b []byte) int {
	for i := 2; i+4 <= len(b) && b[0] == 0xff && b[1] == 0xd8 && b[i] == 0xff; {
		long := int(binary.BigEndian.Uint16(b[i+2:]))
		if long < 2 || i+2+long > len(b) {
			break
		}
		if segment := b[i+4 : i+2+long]; b[i+1] == 0xe1 && len(segment) > 14 && string(segment[:6]) == "Exif\x00\x00" {
			return tag(segment[6:])
		}
		i += 2 + long
	}
	return 1
}

// tag looks for the orientation in the first directory of a TIFF header.
func tag(b []byte) int {
	var order binary.ByteOrder = binary.LittleEndian
	if string(b[:2]) == "MM" {
		order = binary.BigEndian
	}
	at := int(order.Uint32(b[4:]))
	if at < 8 || at+2 > len(b) {
		return 1
	}
	for i, n := at+2, int(order.Uint16(b[at:])); n > 0 && i+12 <= len(b); i, n = i+12, n-1 {
		if order.Uint16(b[i:]) == 0x0112 {
			if v := int(order.Uint16(b[i+8:])); v >= 1 && v <= 8 {
				return v
			}
		}
	}
	return 1
}

// turned is an image as it was seen, whichever way the camera was held.
func turned(from *image.RGBA, orientation int) *image.RGBA {
	if orientation == 1 {
		return from
	}
	w, h := from.Rect.Dx(), from.Rect.Dy()
	size := image.Rect(0, 0, w, h)
	if orientation >= 5 {
		size = image.Rect(0, 0, h, w)
	}
	out := image.NewRGBA(size)
	for y := range size.Dy() {
		for x := range size.Dx() {
			u, v := x, y
			if orientation >= 5 {
				u, v = y, x
			}
			switch orientation {
			case 2, 7, 3, 6: // mirrored or turned: counted from the other end
				if orientation != 6 {
					u = w - 1 - u
				}
			case 8:
				u = w - 1 - u
			}
			switch orientation {
			case 3, 4, 6, 7:
				v = h - 1 - v
			}
			out.SetRGBA(x, y, from.RGBAAt(u, v))
		}
	}
	return out
}
