// SPDX-License-Identifier: BSD-3-Clause

//go:build !js

package main

import (
	"bytes"
	"compress/gzip"
	"strings"
)

// digits write 13 bits as two of 91: 16 letters for 13 bytes, where the usual way, of 64, takes 17 and a third. None of them
// ends a script.
const digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789!#$%&()*+,-./:;=>?@[]^_`{|}~'"

// pack returns bytes compressed and as text, and how many bytes that is of.
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
	held, bits := 0, 0
	write := func() {
		n := held & (1<<13 - 1)
		text.WriteByte(digits[n%91])
		text.WriteByte(digits[n/91])
		held, bits = held>>13, bits-13
	}
	for _, b := range data {
		held |= int(b) << bits
		if bits += 8; bits >= 13 {
			write()
		}
	}
	if bits > 0 {
		write()
	}
	return text.String()
}
