package org.axlecause;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Sends bytes as they are, also those that no client would send, and takes the answer apart (RFC 9112). */
final class RawHttp {

    private static final int TIMEOUT_MILLIS = 60_000;

    private RawHttp() {}

    /**
     * An answer.
     *
     * @param status 0 where the connection was closed without any
     * @param headers by name in small letters
     */
    record Answer(int status, Map<String, String> headers, String body) {}

    static Answer exchange(int port, byte[] request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(TIMEOUT_MILLIS);
            ByteArrayOutputStream read = new ByteArrayOutputStream();
            try {
                socket.getOutputStream().write(request);
                socket.getInputStream().transferTo(read);
            } catch (SocketException closedEarly) {
                // What was read until then is the answer.
                drain(socket, read);
            }
            return parsed(read.toByteArray());
        }
    }

    private static void drain(Socket socket, ByteArrayOutputStream read) {
        try {
            socket.getInputStream().transferTo(read);
        } catch (IOException nothingMore) {
            // The other side is gone.
        }
    }

    private static Answer parsed(byte[] answer) {
        String text = new String(answer, StandardCharsets.ISO_8859_1);
        int end = text.indexOf("\r\n\r\n");
        if (end < 0) {
            return new Answer(0, Map.of(), text);
        }
        String[] head = text.substring(0, end).split("\r\n", -1);
        Map<String, String> headers = new TreeMap<>();
        for (int line = 1; line < head.length; line++) {
            int colon = head[line].indexOf(':');
            headers.put(
                    head[line].substring(0, colon).toLowerCase(Locale.ROOT),
                    head[line].substring(colon + 1).strip());
        }
        String body = text.substring(end + 4);
        if ("chunked".equals(headers.get("transfer-encoding"))) {
            body = whole(body);
        }
        return new Answer(
                Integer.parseInt(head[0].split(" ", -1)[1]),
                headers,
                new String(body.getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8));
    }

    private static String whole(String chunks) {
        StringBuilder body = new StringBuilder();
        int at = 0;
        while (true) {
            int lineEnd = chunks.indexOf("\r\n", at);
            int length = Integer.parseInt(chunks.substring(at, lineEnd), 16);
            if (length == 0) {
                return body.toString();
            }
            body.append(chunks, lineEnd + 2, lineEnd + 2 + length);
            at = lineEnd + 2 + length + 2;
        }
    }
}
