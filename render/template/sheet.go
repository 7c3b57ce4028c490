package template

import (
	"fmt"
	"math"
)

// This file arranges a sheet: the plate above, the scales under it, then the list of holes. A
// sheet fits between the margins of A4 (ISO 216, 210 mm by 297 mm) and of Letter (216 mm by
// 279 mm) alike; a plate too long to lie across is turned along the sheet.

const (
	mostWidth, mostHeight = 170, 218
	border                = 7   // around the plate, for centre lines and sizes
	scaleLength           = 50  // of both check scales
	scaleRoom             = 58  // height that the scales take
	letter                = 2.6 // height of letters
	rowStep               = 3.9
)

// layout says where things lie, in millimetres from the upper left corner.
type layout struct {
	width, height float64
	low, high     point // of the plate in its own coordinates
	turned        bool  // x runs up the sheet
	plate         point // its upper left corner
	scales        point // their corner
	list          point // the first column's upper left corner
	rows          int   // of the list in each column
}

func arrange(parts []part) (layout, error) {
	l := layout{width: mostWidth, plate: point{y: border + letter}}
	l.low, l.high = extent(parts)
	along, across, count := l.high.x-l.low.x, l.high.y-l.low.y, len(holes(parts))
	l.turned = along > mostWidth-2*border
	if l.turned {
		l.beside(along, across, count)
	} else {
		l.below(along, across, count)
	}
	if (l.turned || across > mostWidth-2*border) && l.scales.x+scaleRoom > mostWidth || l.height > mostHeight {
		return l, fmt.Errorf("template.Draw: too large for a sheet: got a plate of %.4g mm by %.4g mm with %d holes, want at most %d mm by %d mm, with fewer holes the more",
			along, across, count, mostHeight-2*border-2, mostWidth-2*border-scaleRoom)
	}
	return l, nil
}

// below puts the scales and the list under the plate.
func (l *layout) below(along, across float64, count int) {
	l.plate.x = (mostWidth - along) / 2
	l.scales = point{border, l.plate.y + across + border + letter}
	l.list = point{scaleRoom + 2*border, l.scales.y}
	l.rows = count
	if count > 12 {
		l.rows = (count + 1) / 2
	}
	l.height = math.Ceil(l.scales.y + math.Max(scaleRoom, float64(l.rows+2)*rowStep))
}

// beside puts them to the right of a plate that lies along the sheet.
func (l *layout) beside(along, across float64, count int) {
	l.plate.x = border
	l.scales = point{l.plate.x + across + 2*border, l.plate.y}
	l.list = point{l.scales.x, l.scales.y + scaleRoom + letter}
	l.rows = count
	l.height = math.Ceil(math.Max(l.plate.y+along+border, l.list.y+float64(count+2)*rowStep))
}

// at returns where a point of the plate lies on the sheet.
func (l layout) at(p point) point {
	if l.turned {
		return point{l.plate.x + l.high.y - p.y, l.plate.y + l.high.x - p.x}
	}
	return point{l.plate.x + p.x - l.low.x, l.plate.y + l.high.y - p.y}
}
