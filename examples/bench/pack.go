// SPDX-License-Identifier: BSD-3-Clause

//go:build !js

package main

import (
	"bytes"
	"compress/gzip"
	"encoding/binary"
	"strings"
)

// digits write bytes in the number system of 85, four as five: a quarter longer than they are, where the usual way, of 64,
// makes them a third longer. None of them means anything in HTML.
const digits = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz!#$%()*+-;=?@^_`{|}~.:,"

// pack returns bytes compressed and as text, and how many bytes that is of: zeros behind them make the last digits five.
func pack(data []byte) (text string, size int, err error) {
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return "", 0, err
	}
	if _, err := z.Write(data); err != nil {
		return "", 0, err
	}
	if err := z.Close(); err != nil {
		return "", 0, err
	}
	return encode(b.Bytes()), b.Len(), nil
}

func encode(data []byte) string {
	var text strings.Builder
	for len(data) > 0 {
		var four [4]byte
		data = data[copy(four[:], data):]
		n := binary.BigEndian.Uint32(four[:])
		var five [5]byte
		for i := 4; i >= 0; i-- {
			five[i] = digits[n%85]
			n /= 85
		}
		text.Write(five[:])
	}
	return text.String()
}
