package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Optional;
import org.axlecause.shared.KafkaTopics.Topic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KafkaTopicsTest {

    private static final String BROKER = "127.0.0.1:9092";

    @Test
    void without_settings_there_are_no_topics_and_no_broker_is_needed() {
        KafkaTopics topics = topics(null, null, null);

        assertThat(topics.in()).isEmpty();
        assertThat(topics.out()).isEmpty();
    }

    @Test
    void a_topic_has_a_tenant_and_where_it_is_read_a_sender() {
        KafkaTopics topics = topics("chain.events=chain:workshops, other.events=other", "chain.told=chain", BROKER);

        assertThat(topics.in())
                .containsExactly(
                        new Topic("chain.events", "chain", "workshops"), new Topic("other.events", "other", "kafka"));
        assertThat(topics.out()).extracting(Topic::name, Topic::tenant).containsExactly(tuple("chain.told", "chain"));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            nullValues = "-",
            value = {
                "no tenant           | chain.events                        | -                    | b:9092 | AXLECAUSE_KAFKA_IN holds 'chain.events'",
                "a tenant in capitals| chain.events=Chain                  | -                    | b:9092 | expected is topic=tenant",
                "a name with a blank | -                                   | chain told=chain     | b:9092 | AXLECAUSE_KAFKA_OUT holds 'chain told=chain'",
                "twice in            | chain.events=chain,chain.events=b   | -                    | b:9092 | name a topic twice",
                "in and out          | chain.events=chain                  | chain.events=chain   | b:9092 | name a topic twice",
                "two out of a tenant | -                                   | one=chain,two=chain  | b:9092 | two topics of one tenant",
                "no broker           | chain.events=chain                  | -                    | -      | set KAFKA_BOOTSTRAP_SERVERS",
            })
    void settings_that_cannot_be_meant_are_refused(String row, String in, String out, String servers, String words) {
        assertThatThrownBy(() -> topics(in, out, servers))
                .as(row)
                .isInstanceOf(EndedAtStartException.class)
                .hasMessageContaining(words);
    }

    private static KafkaTopics topics(String in, String out, String servers) {
        return new KafkaTopics(entries(in), entries(out), Optional.ofNullable(servers));
    }

    private static Optional<List<String>> entries(String setting) {
        return Optional.ofNullable(setting).map(value -> List.of(value.split(",")));
    }
}
