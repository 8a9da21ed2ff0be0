package org.axlecause;

import java.io.Closeable;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Stands between a service and its PostgreSQL and cuts connections in the middle of a commit: by turns after the commit was
 * done and before the service hears of it, and before the server hears of it. Source: PostgreSQL documentation, 55.7
 * (message formats); encryption has to be off.
 */
final class CommitCutter implements Closeable {

    private static final int EVERY = 3;

    private final ServerSocket listener;
    private final int databasePort;
    private final ExecutorService pumps = Executors.newCachedThreadPool();
    private final AtomicInteger commits = new AtomicInteger();
    private final AtomicInteger answersLost = new AtomicInteger();
    private final AtomicInteger commitsLost = new AtomicInteger();
    private volatile boolean cutting;

    CommitCutter(int databasePort) throws IOException {
        this.databasePort = databasePort;
        this.listener = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        pumps.execute(this::accept);
    }

    /** The address of the database by way of this. */
    String through(String url) {
        String proxied = url.replace(":" + databasePort + "/", ":" + listener.getLocalPort() + "/");
        return proxied + (proxied.contains("?") ? "&" : "?") + "sslmode=disable&gssEncMode=disable";
    }

    /** From now on every third commit is cut, or none any more. */
    void cut(boolean on) {
        cutting = on;
    }

    /** How many commits were done without the service hearing of it. */
    int answersLost() {
        return answersLost.get();
    }

    /** How many commits never reached the server. */
    int commitsLost() {
        return commitsLost.get();
    }

    private void accept() {
        try {
            while (true) {
                Socket service = listener.accept();
                Socket database = new Socket(InetAddress.getLoopbackAddress(), databasePort);
                Passage passage = new Passage(service, database);
                pumps.execute(passage::toDatabase);
                pumps.execute(passage::toService);
            }
        } catch (IOException closed) {
            // The listener was closed: the test is over.
        }
    }

    @Override
    public void close() throws IOException {
        listener.close();
        pumps.shutdownNow();
    }

    /** One connection of the service. */
    private final class Passage {

        private final Socket service;
        private final Socket database;
        private final Set<String> commitStatements = new HashSet<>();
        private volatile boolean answerIsToBeLost;

        Passage(Socket service, Socket database) throws IOException {
            this.service = service;
            this.database = database;
            service.setTcpNoDelay(true);
            database.setTcpNoDelay(true);
        }

        void toDatabase() {
            try {
                DataInputStream in = new DataInputStream(service.getInputStream());
                DataOutputStream out = new DataOutputStream(database.getOutputStream());
                passStartup(in, out);
                while (true) {
                    byte type = in.readByte();
                    byte[] body = new byte[in.readInt() - Integer.BYTES];
                    in.readFully(body);
                    if (commits(type, body) && cutting && commits.incrementAndGet() % EVERY == 0) {
                        if (commits.get() / EVERY % 2 == 0) {
                            commitsLost.incrementAndGet();
                            end();
                            return;
                        }
                        answerIsToBeLost = true;
                    }
                    out.write(message(type, body));
                    out.flush();
                }
            } catch (IOException ended) {
                end();
            }
        }

        void toService() {
            try {
                DataInputStream in = new DataInputStream(database.getInputStream());
                DataOutputStream out = new DataOutputStream(service.getOutputStream());
                while (true) {
                    byte type = in.readByte();
                    byte[] body = new byte[in.readInt() - Integer.BYTES];
                    in.readFully(body);
                    if (answerIsToBeLost && type == 'C' && text(body, 0).equals("COMMIT")) {
                        answersLost.incrementAndGet();
                        end();
                        return;
                    }
                    out.write(message(type, body));
                    out.flush();
                }
            } catch (IOException ended) {
                end();
            }
        }

        private boolean commits(byte type, byte[] body) {
            if (type == 'P') {
                String name = text(body, 0);
                if (text(body, name.length() + 1).equals("COMMIT")) {
                    commitStatements.add(name);
                } else {
                    commitStatements.remove(name);
                }
            } else if (type == 'B') {
                return commitStatements.contains(text(body, text(body, 0).length() + 1));
            }
            return type == 'Q' && text(body, 0).equals("COMMIT");
        }

        private void end() {
            for (Socket socket : new Socket[] {service, database}) {
                try {
                    socket.close();
                } catch (IOException closedAlready) {
                    // It is closed, which is what was wanted.
                }
            }
        }
    }

    /** The first message of a connection, which has no type. */
    private static void passStartup(DataInputStream in, DataOutputStream out) throws IOException {
        int length = in.readInt();
        byte[] body = new byte[length - Integer.BYTES];
        in.readFully(body);
        out.writeInt(length);
        out.write(body);
        out.flush();
    }

    private static byte[] message(byte type, byte[] body) {
        int length = body.length + Integer.BYTES;
        return ByteBuffer.allocate(1 + length)
                .put(type)
                .putInt(length)
                .put(body)
                .array();
    }

    private static String text(byte[] body, int from) {
        int end = from;
        while (end < body.length && body[end] != 0) {
            end++;
        }
        return new String(body, from, end - from, StandardCharsets.UTF_8);
    }
}
