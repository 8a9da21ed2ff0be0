package org.axlecause.shared;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Which Kafka topic belongs to which tenant, by the settings; none unless they say so. */
@ApplicationScoped
public class KafkaTopics {

    private static final Pattern ENTRY =
            Pattern.compile("([A-Za-z0-9._-]{1,200})=([a-z0-9][a-z0-9-]{0,31})(?::([A-Za-z0-9._-]{1,64}))?");
    private static final String IN = "AXLECAUSE_KAFKA_IN";
    private static final String OUT = "AXLECAUSE_KAFKA_OUT";
    private static final String USUAL_SENDER = "kafka";

    private final List<Topic> in;
    private final List<Topic> out;

    KafkaTopics(
            @ConfigProperty(name = "axlecause.kafka.in") Optional<List<String>> in,
            @ConfigProperty(name = "axlecause.kafka.out") Optional<List<String>> out,
            @ConfigProperty(name = "kafka.bootstrap.servers") Optional<String> servers) {
        this.in = topics(IN, in.orElse(List.of()));
        this.out = topics(OUT, out.orElse(List.of()));
        Stream<Topic> all = Stream.concat(this.in.stream(), this.out.stream());
        if (hasTwice(all.map(Topic::name))) {
            throw CannotStart.because(
                    IN + " and " + OUT + " name a topic twice; each belongs to one tenant and one direction.");
        }
        if (hasTwice(this.out.stream().map(Topic::tenant))) {
            throw CannotStart.because(OUT + " names two topics of one tenant; expected is one for each.");
        }
        if (!(this.in.isEmpty() && this.out.isEmpty()) && servers.isEmpty()) {
            throw CannotStart.because(IN + " or " + OUT
                    + " names topics, but no broker is set; set KAFKA_BOOTSTRAP_SERVERS to host:port.");
        }
    }

    /**
     * A topic of a tenant.
     *
     * @param name its name at the broker
     * @param tenant whose it is, whatever its records say
     * @param sender who counts as the sender of what is read from it
     */
    public record Topic(String name, String tenant, String sender) {

        /** The topic for records of this one that can't be accepted. */
        public String deadLetters() {
            return name + ".dead-letter";
        }
    }

    /** The topics that events are read from. */
    public List<Topic> in() {
        return in;
    }

    /** The topics that events are sent to. */
    public List<Topic> out() {
        return out;
    }

    private static List<Topic> topics(String setting, List<String> entries) {
        List<Topic> topics = new ArrayList<>();
        for (String entry : entries) {
            Matcher parts = ENTRY.matcher(entry.strip());
            if (!parts.matches()) {
                throw CannotStart.because(setting + " holds '" + entry
                        + "'; expected is topic=tenant or topic=tenant:sender, several parted by commas.");
            }
            String sender = parts.group(3) == null ? USUAL_SENDER : parts.group(3);
            topics.add(new Topic(parts.group(1), parts.group(2), sender));
        }
        return List.copyOf(topics);
    }

    private static boolean hasTwice(Stream<String> names) {
        Set<String> seen = new HashSet<>();
        return names.anyMatch(name -> !seen.add(name));
    }
}
