package org.axlecause.shared;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.stream.Stream;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.AdminClientConfig;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.Uuid;

/** A real Kafka broker, one node in KRaft mode, as a child process with a folder of its own; killed and started at will. */
public final class Broker implements AutoCloseable {

    /** Why a system property: profile and test are loaded by different class loaders, and both must name one port. */
    private static final String PORT = "axlecause.test.broker-port";

    private final Path folder;
    private Process process;

    private Broker(Path folder) {
        this.folder = folder;
    }

    /** Where the broker of this test run listens once it has been started. */
    public static String address() {
        if (System.getProperty(PORT) == null) {
            System.setProperty(PORT, Integer.toString(FreePort.find()));
        }
        return "127.0.0.1:" + System.getProperty(PORT);
    }

    public static Broker started() throws IOException, InterruptedException {
        Broker broker = new Broker(Files.createTempDirectory("axlecause-broker-"));
        Path settings = Files.writeString(broker.folder.resolve("server.properties"), broker.settings());
        Process format = broker.run(
                "kafka.tools.StorageTool",
                "format",
                "--standalone",
                "-t",
                Uuid.randomUuid().toString(),
                "-c",
                settings.toString());
        if (format.waitFor() != 0) {
            throw new IllegalStateException("The broker's folder wasn't formatted: " + broker.log());
        }
        broker.start();
        return broker;
    }

    /** Starts the process, on what the one before has left. */
    public void start() throws IOException {
        process = run("kafka.Kafka", folder.resolve("server.properties").toString());
        Await.until("the broker answers", this::answers);
    }

    /** Ends the process at once, as a power cut would. */
    public void kill() {
        process.destroyForcibly();
        process.onExit().join();
    }

    @Override
    public void close() throws IOException {
        kill();
        try (Stream<Path> paths = Files.walk(folder)) {
            paths.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
        }
    }

    private boolean answers() {
        try (Admin admin = Admin.create(Map.of(
                AdminClientConfig.BOOTSTRAP_SERVERS_CONFIG, address(),
                AdminClientConfig.DEFAULT_API_TIMEOUT_MS_CONFIG, 2_000,
                AdminClientConfig.REQUEST_TIMEOUT_MS_CONFIG, 1_000))) {
            return !admin.describeCluster().nodes().get().isEmpty();
        } catch (ExecutionException | KafkaException notYet) {
            if (!process.isAlive()) {
                throw new IllegalStateException("The broker has ended: " + log(), notYet);
            }
            return false;
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private Process run(String... command) throws IOException {
        List<String> java = List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-cp",
                System.getProperty("java.class.path"));
        return new ProcessBuilder(
                        Stream.concat(java.stream(), Stream.of(command)).toList())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        folder.resolve("broker.log").toFile()))
                .start();
    }

    private String log() {
        try {
            return Files.readString(folder.resolve("broker.log"));
        } catch (IOException e) {
            return e.toString();
        }
    }

    private String settings() {
        int controller = FreePort.find();
        return """
                process.roles=broker,controller
                node.id=1
                listeners=PLAINTEXT://%1$s,CONTROLLER://127.0.0.1:%2$d
                advertised.listeners=PLAINTEXT://%1$s
                controller.listener.names=CONTROLLER
                controller.quorum.bootstrap.servers=127.0.0.1:%2$d
                listener.security.protocol.map=CONTROLLER:PLAINTEXT,PLAINTEXT:PLAINTEXT
                log.dirs=%3$s
                num.partitions=4
                offsets.topic.num.partitions=4
                offsets.topic.replication.factor=1
                transaction.state.log.replication.factor=1
                transaction.state.log.min.isr=1
                group.initial.rebalance.delay.ms=0
                """.formatted(address(), controller, folder.resolve("log"));
    }
}
