// Package colour holds the few pieces of colour science that the figures and the page
// need: sRGB, the OKLab space, luminance contrast, and how colours look to people with a
// colour-vision deficiency. Colours are chosen in OKLab and proven in this package's tests.
package colour

import (
	"fmt"
	"math"
)

// RGB is a colour in linear light, each part between 0 and 1 when it can be shown.
type RGB struct{ R, G, B float64 }

// Lab is a colour in OKLab: lightness 0 to 1, green to red, blue to yellow.
//
// B. Ottosson, "A perceptual color space for image processing", 2020. Its matrices are
// given here from memory; the tests check them by the neutral axis and the round trip.
type Lab struct{ L, A, B float64 }

// LCh returns the colour of a lightness, a chroma and a hue in degrees.
func LCh(lightness, chroma, degrees float64) Lab {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Lab{lightness, chroma * cos, chroma * sin}
}

// RGB returns the colour in linear light.
func (c Lab) RGB() RGB {
	l := cube(c.L + 0.3963377774*c.A + 0.2158037573*c.B)
	m := cube(c.L - 0.1055613458*c.A - 0.0638541728*c.B)
	s := cube(c.L - 0.0894841775*c.A - 1.2914855480*c.B)
	return RGB{
		4.0767416621*l - 3.3077115913*m + 0.2309699292*s,
		-1.2684380046*l + 2.6097574011*m - 0.3413193965*s,
		-0.0041960863*l - 0.7034186147*m + 1.7076147010*s,
	}
}

func cube(x float64) float64 { return x * x * x }

// Lab returns the colour in OKLab.
func (c RGB) Lab() Lab {
	l := math.Cbrt(0.4122214708*c.R + 0.5363325363*c.G + 0.0514459929*c.B)
	m := math.Cbrt(0.2119034982*c.R + 0.6806995451*c.G + 0.1073969566*c.B)
	s := math.Cbrt(0.0883024619*c.R + 0.2817188376*c.G + 0.6299787005*c.B)
	return Lab{
		0.2104542553*l + 0.7936177850*m - 0.0040720468*s,
		1.9779984951*l - 2.4285922050*m + 0.4505937099*s,
		0.0259040371*l + 0.7827717662*m - 0.8086757660*s,
	}
}

// Distance returns the Euclidean distance in OKLab; 0.02 is about a just noticeable step
// between large patches, thin lines need several times as much.
func (c Lab) Distance(o Lab) float64 {
	return math.Sqrt((c.L-o.L)*(c.L-o.L) + (c.A-o.A)*(c.A-o.A) + (c.B-o.B)*(c.B-o.B))
}

// Shown reports whether a screen can show the colour.
func (c RGB) Shown() bool {
	in := func(x float64) bool { return x >= -1e-4 && x <= 1+1e-4 }
	return in(c.R) && in(c.G) && in(c.B)
}

// Hex writes the colour as CSS reads it.
func (c RGB) Hex() string {
	return fmt.Sprintf("#%02x%02x%02x", encode(c.R), encode(c.G), encode(c.B))
}

// encode applies the transfer curve of IEC 61966-2-1 (sRGB).
func encode(x float64) int {
	x = min(max(x, 0), 1)
	if x <= 0.0031308 {
		return int(math.Round(255 * 12.92 * x))
	}
	return int(math.Round(255 * (1.055*math.Pow(x, 1/2.4) - 0.055)))
}

// Hex reads a colour written as #rrggbb.
func Hex(text string) (RGB, error) {
	var r, g, b int
	if _, err := fmt.Sscanf(text, "#%02x%02x%02x", &r, &g, &b); err != nil {
		return RGB{}, fmt.Errorf("colour %q: got %v, want #rrggbb", text, err)
	}
	return RGB{decode(r), decode(g), decode(b)}, nil
}

func decode(part int) float64 {
	x := float64(part) / 255
	if x <= 0.04045 {
		return x / 12.92
	}
	return math.Pow((x+0.055)/1.055, 2.4)
}

// Luminance returns the relative luminance of WCAG 2.2, which is CIE Y of sRGB.
func (c RGB) Luminance() float64 { return 0.2126*c.R + 0.7152*c.G + 0.0722*c.B }

// Contrast returns the contrast ratio of WCAG 2.2, from 1 to 21.
func Contrast(a, b RGB) float64 {
	x, y := a.Luminance(), b.Luminance()
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}
