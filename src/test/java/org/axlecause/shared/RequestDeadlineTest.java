package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;

import io.netty.buffer.ByteBuf;
import io.netty.buffer.Unpooled;
import io.netty.channel.embedded.EmbeddedChannel;
import io.netty.handler.codec.http.DefaultFullHttpResponse;
import io.netty.handler.codec.http.HttpRequestDecoder;
import io.netty.handler.codec.http.HttpResponseEncoder;
import io.netty.handler.codec.http.HttpResponseStatus;
import io.netty.handler.codec.http.HttpVersion;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Status 408 by RFC 9110, section 15.5.9; time is the channel's own and passes only when told to. */
class RequestDeadlineTest {

    private final EmbeddedChannel connection = connection();

    @Test
    void headers_that_trickle_in_are_cut_at_the_deadline() {
        send("GET / HTTP/1.1\r\nHost: a\r\n");
        pass(29);
        send("X-One: 1\r\n");

        assertThat(connection.isOpen()).isTrue();
        pass(1);

        assertThat(connection.isOpen()).isFalse();
        assertThat(answer())
                .startsWith("HTTP/1.1 408 Request Timeout\r\n")
                .contains("\r\nContent-Type: application/problem+json\r\n", "\"code\":\"request-timeout\"");
    }

    @Test
    void a_body_that_trickles_in_is_cut_at_the_deadline() {
        send("POST / HTTP/1.1\r\nHost: a\r\nContent-Length: 10\r\n\r\n12345");
        pass(29);
        send("6");
        pass(1);

        assertThat(connection.isOpen()).isFalse();
    }

    @Test
    void a_request_that_is_whole_in_time_stays_however_long_its_answer_takes() {
        send("POST / HTTP/1.1\r\nHost: a\r\nContent-Length: 2\r\n\r\n1");
        pass(29);
        send("2");
        pass(3600);

        assertThat(connection.isOpen()).isTrue();
        assertThat(answer()).isEmpty();
    }

    @Test
    void each_request_of_a_connection_has_the_whole_time() {
        for (int request = 0; request < 3; request++) {
            send("GET / HTTP/1.1\r\n");
            pass(20);
            send("Host: a\r\n\r\n");
            pass(20);
        }

        assertThat(connection.isOpen()).isTrue();
        send("GET / HTTP/1.1\r\n");
        pass(30);
        assertThat(connection.isOpen()).isFalse();
    }

    @Test
    void a_request_that_was_answered_before_its_end_is_cut_without_a_second_answer() {
        send("POST / HTTP/1.1\r\nHost: a\r\nContent-Length: 2\r\n\r\n1");
        connection.writeOutbound(new DefaultFullHttpResponse(
                HttpVersion.HTTP_1_1, HttpResponseStatus.UNAUTHORIZED, Unpooled.EMPTY_BUFFER));
        pass(30);

        assertThat(connection.isOpen()).isFalse();
        assertThat(answer()).contains("401").doesNotContain("408");
    }

    private static EmbeddedChannel connection() {
        EmbeddedChannel channel = new EmbeddedChannel();
        channel.freezeTime();
        channel.pipeline()
                .addLast(
                        new RequestDeadline.Watch(Duration.ofSeconds(30)),
                        new HttpRequestDecoder(),
                        new HttpResponseEncoder());
        return channel;
    }

    private void send(String text) {
        connection.writeInbound(Unpooled.copiedBuffer(text, StandardCharsets.US_ASCII));
    }

    private void pass(int seconds) {
        connection.advanceTimeBy(seconds, TimeUnit.SECONDS);
        connection.runScheduledPendingTasks();
    }

    private String answer() {
        StringBuilder answer = new StringBuilder();
        for (ByteBuf part = connection.readOutbound(); part != null; part = connection.readOutbound()) {
            answer.append(part.toString(StandardCharsets.UTF_8));
            part.release();
        }
        return answer.toString();
    }
}
