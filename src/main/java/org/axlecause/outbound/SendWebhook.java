package org.axlecause.outbound;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.tls.TlsConfiguration;
import io.quarkus.tls.TlsConfigurationRegistry;
import io.vertx.core.Future;
import io.vertx.core.Promise;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpClient;
import io.vertx.core.http.HttpClientOptions;
import io.vertx.core.http.HttpClientRequest;
import io.vertx.core.http.HttpClientResponse;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.RequestOptions;
import io.vertx.core.net.SocketAddress;
import io.vertx.core.net.TrustOptions;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.net.InetSocketAddress;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.atomic.AtomicLong;
import javax.net.ssl.SSLException;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Posts one signed message by Standard Webhooks 1.0.0 to an endpoint that was checked; follows no redirect. */
@ApplicationScoped
class SendWebhook {

    private static final Logger LOG = Logger.getLogger(SendWebhook.class);
    private static final String MEDIA_TYPE = "application/cloudevents+json; charset=UTF-8";
    private static final int LARGEST_ANSWER = 64 * 1024;
    private static final int MOST_CONNECTIONS = 64;
    private static final Duration LONGEST_REST = Duration.ofHours(24);

    private final Vertx vertx;
    private final Clock clock;
    private final Duration timeout;
    private final HttpClient client;

    @Inject
    SendWebhook(
            Vertx vertx,
            Clock clock,
            @ConfigProperty(name = "axlecause.outbound.timeout") Duration timeout,
            TlsConfigurationRegistry tls) {
        this(
                vertx,
                clock,
                timeout,
                tls.get("webhooks").map(TlsConfiguration::getTrustStoreOptions).orElse(null));
    }

    SendWebhook(Vertx vertx, Clock clock, Duration timeout, @Nullable TrustOptions trusted) {
        this.vertx = vertx;
        this.clock = clock;
        this.timeout = timeout;
        HttpClientOptions options = new HttpClientOptions()
                .setConnectTimeout((int) timeout.toMillis())
                .setKeepAlive(false)
                .setMaxPoolSize(MOST_CONNECTIONS)
                .setVerifyHost(true);
        if (trusted != null) {
            options.setTrustOptions(trusted);
        }
        this.client = vertx.httpClientBuilder()
                .with(options)
                .withConnectHandler(connection ->
                        connection.exceptionHandler(cut -> LOG.debug("A connection to an endpoint was cut", cut)))
                .build();
    }

    /** What the endpoint answered; always completes, with success or failure as a value, by the time-out at the latest. */
    CompletionStage<Answer> send(Endpoint endpoint, Delivery delivery, List<Secret> secrets) {
        Promise<Answer> answer = Promise.promise();
        Future<HttpClientRequest> connected = client.request(options(endpoint));
        long timer = vertx.setTimer(timeout.toMillis(), late -> {
            answer.tryComplete(Answer.none("no answer within " + timeout.toSeconds() + " s"));
            connected.onSuccess(HttpClientRequest::reset);
        });
        connected
                .compose(request -> {
                    sign(request, delivery, secrets);
                    return request.send(Buffer.buffer(delivery.body()))
                            .onSuccess(response -> drain(request, response, timer));
                })
                .onSuccess(response -> answer.tryComplete(
                        Answer.ofStatus(response.statusCode(), rest(response.getHeader("Retry-After")))))
                .onFailure(fault -> {
                    vertx.cancelTimer(timer);
                    answer.tryComplete(Answer.none(words(fault)));
                });
        return answer.future().toCompletionStage();
    }

    void atStop(@Observes ShutdownEvent event) {
        client.close();
    }

    private static RequestOptions options(Endpoint endpoint) {
        return new RequestOptions()
                .setMethod(HttpMethod.POST)
                .setServer(SocketAddress.inetSocketAddress(new InetSocketAddress(endpoint.address(), endpoint.port())))
                .setHost(endpoint.host())
                .setPort(endpoint.port())
                .setSsl(endpoint.secure())
                .setURI(endpoint.target())
                .setFollowRedirects(false);
    }

    private void sign(HttpClientRequest request, Delivery delivery, List<Secret> secrets) {
        String id = delivery.event().toString();
        long seconds = clock.instant().getEpochSecond();
        request.putHeader("Content-Type", MEDIA_TYPE)
                .putHeader("User-Agent", "axlecause")
                .putHeader("webhook-id", id)
                .putHeader("webhook-timestamp", Long.toString(seconds))
                .putHeader("webhook-signature", Signature.of(id, seconds, delivery.body(), secrets));
    }

    /** The status is all that counts; what else comes is read within bounds, so that a polite endpoint isn't cut off. */
    private void drain(HttpClientRequest request, HttpClientResponse response, long timer) {
        AtomicLong read = new AtomicLong();
        response.handler(chunk -> {
            if (read.addAndGet(chunk.length()) > LARGEST_ANSWER) {
                request.reset();
            }
        });
        response.exceptionHandler(cut -> vertx.cancelTimer(timer));
        response.endHandler(end -> vertx.cancelTimer(timer));
    }

    private @Nullable Duration rest(@Nullable String retryAfter) {
        if (retryAfter == null) {
            return null;
        }
        Duration asked =
                retryAfter.matches("\\d{1,9}") ? Duration.ofSeconds(Long.parseLong(retryAfter)) : until(retryAfter);
        if (asked == null || asked.isNegative()) {
            return null;
        }
        return asked.compareTo(LONGEST_REST) > 0 ? LONGEST_REST : asked;
    }

    private @Nullable Duration until(String date) {
        try {
            Instant moment = ZonedDateTime.parse(date, DateTimeFormatter.RFC_1123_DATE_TIME)
                    .toInstant();
            return Duration.between(clock.instant(), moment);
        } catch (DateTimeException e) {
            return null;
        }
    }

    private static String words(Throwable fault) {
        return fault instanceof SSLException ? "TLS can't be agreed on" : "the connection failed";
    }
}
