package org.axlecause.shared;

import io.quarkus.runtime.configuration.MemorySize;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.impl.RoutingContextInternal;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.concurrent.atomic.AtomicLong;
import org.axlecause.shared.RefusedException.Reason;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/**
 * Reads bodies whole before anybody works on them, so that a slow sender holds no worker thread. Refuses in words what is
 * compressed or over the limit, and large bodies while the memory for them is taken; of every body the first part is free.
 */
@ApplicationScoped
class BodyReader {

    private static final int BEFORE_THE_SERVERS_OWN = -100;
    private static final int FREE = 64 * 1024;

    private final long limit;
    private final long memory;
    private final AtomicLong taken = new AtomicLong();

    BodyReader(
            @ConfigProperty(name = "quarkus.http.limits.max-body-size") MemorySize limit,
            @ConfigProperty(name = "axlecause.memory-for-bodies") MemorySize memory) {
        this.limit = limit.asLongValue();
        this.memory = memory.asLongValue();
    }

    void register(@Observes Router router) {
        router.route().order(BEFORE_THE_SERVERS_OWN).handler(this::check);
    }

    private void check(RoutingContext context) {
        String length = context.request().getHeader(HttpHeaders.CONTENT_LENGTH);
        String encoding = context.request().getHeader(HttpHeaders.CONTENT_ENCODING);
        if (length != null && isOver(length)) {
            RouterAnswer.refuseUnread(context, Reason.TOO_LARGE, tooLarge());
        } else if (encoding != null && !encoding.isBlank() && !encoding.strip().equalsIgnoreCase("identity")) {
            RouterAnswer.refuseUnread(
                    context,
                    Reason.UNSUPPORTED_FORMAT,
                    "Content-Encoding is " + encoding + "; bodies are read uncompressed only. Send it as it is.");
        } else if (length != null || context.request().headers().contains(HttpHeaders.TRANSFER_ENCODING)) {
            new Reading(context).begin();
        } else {
            context.next();
        }
    }

    private String tooLarge() {
        return "The body is over the limit of " + limit + " bytes; nothing was read. Send it in smaller parts.";
    }

    private boolean isOver(String length) {
        try {
            return Long.parseLong(length) > limit;
        } catch (NumberFormatException e) {
            return false;
        }
    }

    /** One body on its way in; all on the event loop of its connection. */
    private final class Reading {

        private final RoutingContext context;
        private @Nullable Buffer body = Buffer.buffer();
        private long charged;

        Reading(RoutingContext context) {
            this.context = context;
        }

        void begin() {
            HttpServerRequest request = context.request();
            context.addEndHandler(ended -> giveBack());
            request.handler(this::part);
            request.endHandler(ended -> whole());
            request.exceptionHandler(broken -> giveBack());
            if ("100-continue".equalsIgnoreCase(request.getHeader(HttpHeaders.EXPECT))) {
                context.response().writeContinue();
            }
        }

        private void part(Buffer part) {
            Buffer soFar = body;
            if (soFar == null) {
                return;
            }
            long length = (long) soFar.length() + part.length();
            if (length > limit) {
                refuse(Reason.TOO_LARGE, tooLarge());
            } else if (!charge(length - FREE)) {
                refuse(
                        Reason.UNAVAILABLE,
                        "The service reads as many large bodies as it has memory for; nothing was stored. Send it"
                                + " again.");
            } else {
                soFar.appendBuffer(part);
            }
        }

        private void whole() {
            Buffer read = body;
            if (read != null) {
                ((RoutingContextInternal) context).setBody(read);
                context.next();
            }
        }

        private void refuse(Reason reason, String detail) {
            giveBack();
            RouterAnswer.refuseUnread(context, reason, detail);
        }

        private boolean charge(long wanted) {
            long more = wanted - charged;
            if (more <= 0) {
                return true;
            }
            if (taken.addAndGet(more) > memory) {
                taken.addAndGet(-more);
                return false;
            }
            charged = wanted;
            return true;
        }

        private void giveBack() {
            body = null;
            taken.addAndGet(-charged);
            charged = 0;
        }
    }
}
