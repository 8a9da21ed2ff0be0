package org.axlecause.shared;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;

/** A port that nobody listened on a moment ago, for processes that must be told theirs. */
public final class FreePort {

    private FreePort() {}

    public static int find() {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
