package org.axlecause.shared;

import io.netty.bootstrap.ChannelInitializerExtension;
import io.netty.buffer.Unpooled;
import io.netty.channel.Channel;
import io.netty.channel.ChannelDuplexHandler;
import io.netty.channel.ChannelFutureListener;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.channel.ChannelPromise;
import io.netty.handler.codec.http.HttpRequestDecoder;
import io.netty.handler.codec.http.LastHttpContent;
import io.netty.util.concurrent.Future;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.axlecause.shared.RefusedException.Reason;
import org.eclipse.microprofile.config.ConfigProvider;
import org.jspecify.annotations.Nullable;

/**
 * Cuts a connection whose request takes longer to arrive than the deadline, headers and body together, however steadily
 * its bytes trickle in; a time-out for idle connections alone starts anew with every byte.
 */
public final class RequestDeadline extends ChannelInitializerExtension {

    private static final String SETTING = "axlecause.request-deadline";
    private static final String WATCHES = "serviceload";

    private static volatile Duration deadline = Duration.ofSeconds(30);

    /** Has every server of this virtual machine keep the deadline of the settings; must come before the first one. */
    public static void keep() {
        ConfigProvider.getConfig().getOptionalValue(SETTING, Duration.class).ifPresent(set -> deadline = set);
        System.setProperty(EXTENSIONS_SYSTEM_PROPERTY, WATCHES);
    }

    @Override
    public void postInitializeServerChildChannel(Channel channel) {
        channel.pipeline().addFirst(new Watch(deadline));
    }

    /** Sees the first byte of a request, and what is answered. */
    static final class Watch extends ChannelDuplexHandler {

        private final Duration limit;
        private boolean seesEnds;
        private boolean arriving;
        private boolean answering;
        private @Nullable Future<?> alarm;

        Watch(Duration limit) {
            this.limit = limit;
        }

        @Override
        public void channelRead(ChannelHandlerContext connection, Object bytes) {
            if (!seesEnds) {
                ChannelHandlerContext decoder = connection.pipeline().context(HttpRequestDecoder.class);
                if (decoder != null) {
                    connection.pipeline().addAfter(decoder.name(), null, new Ends());
                    seesEnds = true;
                }
            }
            arriving = seesEnds;
            connection.fireChannelRead(bytes);
        }

        @Override
        public void channelReadComplete(ChannelHandlerContext connection) {
            if (arriving && alarm == null) {
                answering = false;
                alarm = connection.executor().schedule(() -> cut(connection), limit.toMillis(), TimeUnit.MILLISECONDS);
            }
            connection.fireChannelReadComplete();
        }

        @Override
        public void write(ChannelHandlerContext connection, Object message, ChannelPromise promise) throws Exception {
            answering = true;
            super.write(connection, message, promise);
        }

        @Override
        public void channelInactive(ChannelHandlerContext connection) {
            arrived();
            connection.fireChannelInactive();
        }

        private void arrived() {
            arriving = false;
            if (alarm != null) {
                alarm.cancel(false);
                alarm = null;
            }
        }

        private void cut(ChannelHandlerContext connection) {
            byte[] body = Json.text(RefusedException.because(
                                    Reason.REQUEST_TIMEOUT,
                                    "The request was not whole after " + limit.toSeconds()
                                            + " s; nothing was stored. Send it again over a better connection, or in"
                                            + " smaller parts.")
                            .problem())
                    .getBytes(StandardCharsets.UTF_8);
            String head = String.join(
                    "\r\n",
                    List.of(
                            "HTTP/1.1 408 Request Timeout",
                            "Content-Type: " + Problem.MEDIA_TYPE,
                            "Content-Length: " + body.length,
                            "Connection: close",
                            "",
                            ""));
            connection
                    .writeAndFlush(
                            answering
                                    ? Unpooled.EMPTY_BUFFER
                                    : Unpooled.wrappedBuffer(head.getBytes(StandardCharsets.US_ASCII), body))
                    .addListener(ChannelFutureListener.CLOSE);
        }

        /** Sees the last byte of each request. */
        private final class Ends extends ChannelInboundHandlerAdapter {

            @Override
            public void channelRead(ChannelHandlerContext connection, Object part) {
                if (part instanceof LastHttpContent) {
                    arrived();
                }
                connection.fireChannelRead(part);
            }
        }
    }
}
